package org.isopter.cli.option;

import java.util.Arrays;
import picocli.CommandLine.ITypeConverter;
import picocli.CommandLine.TypeConversionException;

/** What a line of invented examinations is. */
public enum GenerateForm {
  NDJSON("ndjson"),
  FHIR_NDJSON("fhir-ndjson");

  /** Finds a form by its word; the option parser would name the constants beside it. */
  public static final class Reader implements ITypeConverter<GenerateForm> {

    /** Made by picocli. */
    Reader() {}

    @Override
    public GenerateForm convert(String word) {
      return Arrays.stream(values())
          .filter(form -> form.word.equalsIgnoreCase(word))
          .findFirst()
          .orElseThrow(
              () ->
                  new TypeConversionException(
                      "expected one of " + Arrays.toString(values()) + " but was '" + word + "'"));
    }
  }

  private final String word;

  GenerateForm(String word) {
    this.word = word;
  }

  @Override
  public String toString() {
    return word;
  }
}
