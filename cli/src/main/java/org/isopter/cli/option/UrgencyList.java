package org.isopter.cli.option;

import java.util.Arrays;
import org.isopter.model.letter.UrgencyRules;
import picocli.CommandLine.ITypeConverter;
import picocli.CommandLine.TypeConversionException;

/** Finds a list of urgent findings by its name. */
public final class UrgencyList implements ITypeConverter<UrgencyRules> {

  /** Made by picocli. */
  UrgencyList() {}

  @Override
  public UrgencyRules convert(String word) {
    return Arrays.stream(UrgencyRules.values())
        .filter(list -> list.word().equals(word))
        .findFirst()
        .orElseThrow(
            () ->
                new TypeConversionException(
                    "\"" + word + "\" is none of " + Arrays.toString(UrgencyRules.values())));
  }
}
