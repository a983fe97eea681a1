package org.isopter.model.exam;

import java.util.HashMap;
import java.util.List;
import java.util.Map;

/**
 * The name of a fact within its record: that of its measurement, with a number from the second of
 * the same measurement on.
 *
 * <p>The same record always gives the same names, so that sending it again changes nothing.
 *
 * @param text for instance {@code distance-acuity.right.unaided}
 */
public record FactKey(String text) {

  /** Returns the keys of the facts, in their order; a repeated measurement gets a number. */
  public static List<FactKey> of(List<Fact<?>> facts) {
    Map<String, Integer> seen = new HashMap<>(2 * facts.size());
    return facts.stream().map(fact -> numbered(Measurement.of(fact).name(), seen)).toList();
  }

  private static FactKey numbered(String name, Map<String, Integer> seen) {
    int number = seen.merge(name, 1, Integer::sum);
    return new FactKey(number == 1 ? name : name + "." + number);
  }

  @Override
  public String toString() {
    return text;
  }
}
