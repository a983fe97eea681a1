package org.isopter.model.derive;

import java.math.BigDecimal;
import java.util.Arrays;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.isopter.model.clinical.statement.Statement;
import org.isopter.model.exam.FactKey;
import org.isopter.model.exam.Seen;
import org.isopter.model.value.Quantity;
import org.isopter.model.value.Site;
import org.isopter.model.value.Unit;

/**
 * A statement that follows from facts of an examination; it was not seen, and is no fact of it.
 *
 * @param statement what is said, why, how surely and after which source
 * @param site the eye it speaks of; both where it compares the eyes or speaks of the person
 * @param from the names of the facts it rests on, at least one, in the order of their use
 * @param value the number that is derived, where it is a single one
 */
public record Derived(
    Statement statement, Site site, List<FactKey> from, Optional<Quantity> value) {

  /**
   * Makes a derived statement.
   *
   * @throws IllegalArgumentException when it rests on no fact
   */
  public Derived {
    from = from.stream().distinct().toList();
    if (from.isEmpty()) {
      throw new IllegalArgumentException(statement.id() + " rests on no fact");
    }
  }

  static Derived of(Statement statement, Site site, Seen<?>... from) {
    return of(statement, site, Arrays.asList(from));
  }

  static Derived of(Statement statement, Site site, List<Seen<?>> from) {
    return new Derived(statement, site, from.stream().map(Seen::key).toList(), Optional.empty());
  }

  Derived value(Optional<BigDecimal> number, Unit unit) {
    return new Derived(statement, site, from, number.map(digits -> new Quantity(digits, unit)));
  }

  /**
   * Returns names for derived statements of one examination, in their order: kind and site, with a
   * number from the second of a kind on. The same examination always gives the same names.
   */
  public static List<String> names(List<Derived> all) {
    Map<String, Integer> seen = new HashMap<>();
    return all.stream().map(one -> one.name(seen)).toList();
  }

  private String name(Map<String, Integer> seen) {
    String plain = statement.id() + "." + site.word();
    int number = seen.merge(plain, 1, Integer::sum);
    return number == 1 ? plain : plain + "." + number;
  }
}
