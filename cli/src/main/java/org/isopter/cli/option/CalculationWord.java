package org.isopter.cli.option;

import java.util.Iterator;
import java.util.List;
import org.isopter.task.calculate.Calculation;
import picocli.CommandLine.ITypeConverter;
import picocli.CommandLine.TypeConversionException;

/** Finds a calculation by its word. */
public final class CalculationWord implements ITypeConverter<Calculation>, Iterable<String> {

  private static final List<Calculation> ALL = List.of(Calculation.values());

  @Override
  public Calculation convert(String word) {
    return ALL.stream()
        .filter(one -> one.toString().equalsIgnoreCase(word))
        .findFirst()
        .orElseThrow(
            () ->
                new TypeConversionException("expected one of " + ALL + " but was '" + word + "'"));
  }

  @Override
  public Iterator<String> iterator() {
    return ALL.stream().map(Calculation::toString).iterator();
  }
}
