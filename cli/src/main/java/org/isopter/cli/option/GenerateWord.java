package org.isopter.cli.option;

import java.util.Arrays;
import org.isopter.task.generate.GenerateForm;
import picocli.CommandLine.ITypeConverter;
import picocli.CommandLine.TypeConversionException;

/** Finds the form of a line by its word; picocli would list the constants' names beside it. */
final class GenerateWord implements ITypeConverter<GenerateForm> {

  @Override
  public GenerateForm convert(String word) {
    GenerateForm[] forms = GenerateForm.values();
    return Arrays.stream(forms)
        .filter(form -> form.toString().equalsIgnoreCase(word))
        .findFirst()
        .orElseThrow(
            () ->
                new TypeConversionException(
                    "expected one of " + Arrays.toString(forms) + " but was '" + word + "'"));
  }
}
