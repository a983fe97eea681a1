package org.isopter.model.exam;

import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.StringJoiner;
import org.isopter.model.finding.DatumTexts;
import org.isopter.model.finding.EncodedValue;

/**
 * The name of a fact within its record: finding, site, and what tells it from its neighbours.
 *
 * <p>The same record always gives the same names, so that sending it again changes nothing.
 *
 * @param text for instance {@code distance-acuity.right.unaided}
 */
public record FactKey(String text) {

  /** Returns the keys of the facts, in their order; a repeated measurement gets a number. */
  public static List<FactKey> of(List<Fact<?>> facts) {
    Map<String, Integer> seen = new HashMap<>();
    return facts.stream().map(fact -> numbered(plain(fact), seen)).toList();
  }

  private static FactKey numbered(String plain, Map<String, Integer> seen) {
    int number = seen.merge(plain, 1, Integer::sum);
    return new FactKey(number == 1 ? plain : plain + "." + number);
  }

  private static String plain(Fact<?> fact) {
    StringJoiner key = new StringJoiner(".");
    key.add(fact.finding().id()).add(fact.site().word());
    fact.panel().ifPresent(panel -> distinguish(fact, panel, key));
    fact.at().ifPresent(time -> key.add(time.toInstant().toString()));
    return key.toString();
  }

  private static void distinguish(Fact<?> fact, EncodedValue panel, StringJoiner key) {
    for (String part : fact.finding().distinguishing()) {
      panel.found(part).ifPresent(datum -> key.add(DatumTexts.of(datum)));
    }
  }

  @Override
  public String toString() {
    return text;
  }
}
