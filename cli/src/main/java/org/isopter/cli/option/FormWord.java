package org.isopter.cli.option;

import java.util.Iterator;
import java.util.Set;
import org.isopter.task.input.InputForm;
import picocli.CommandLine.ITypeConverter;
import picocli.CommandLine.TypeConversionException;

/** Reads the word of a form, of those that an option takes. */
public abstract sealed class FormWord implements ITypeConverter<InputForm>, Iterable<String> {

  private final Set<InputForm> forms;

  private FormWord(Set<InputForm> forms) {
    this.forms = forms;
  }

  /** The forms of a record. */
  public static final class OfRecords extends FormWord {

    public OfRecords() {
      super(InputForm.OF_RECORDS);
    }
  }

  /** The forms of FHIR. */
  public static final class OfFhir extends FormWord {

    public OfFhir() {
      super(InputForm.OF_FHIR);
    }
  }

  /** The forms of what may be either. */
  public static final class OfEither extends FormWord {

    public OfEither() {
      super(InputForm.OF_EITHER);
    }
  }

  @Override
  public InputForm convert(String word) {
    return forms.stream()
        .filter(form -> form.toString().equalsIgnoreCase(word))
        .findFirst()
        .orElseThrow(
            () ->
                new TypeConversionException(
                    "expected one of " + forms + " but was '" + word + "'"));
  }

  @Override
  public Iterator<String> iterator() {
    return forms.stream().map(InputForm::toString).iterator();
  }
}
