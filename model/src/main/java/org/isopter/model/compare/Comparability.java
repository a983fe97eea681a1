package org.isopter.model.compare;

import java.util.Optional;
import org.isopter.model.catalogue.Alignments;
import org.isopter.model.catalogue.Colours;
import org.isopter.model.catalogue.Drops;
import org.isopter.model.catalogue.Pupils;
import org.isopter.model.exam.Exam;
import org.isopter.model.exam.Fact;
import org.isopter.model.value.Quantity;

/** What else keeps two results of one measurement from being compared; common practice. */
final class Comparability {

  private Comparability() {}

  /** Says whether a fact is of pupils on which drops that widen them may have acted. */
  static boolean isUnderDrops(Fact<?> fact, Exam exam) {
    return Pupils.all().contains(fact.finding())
        && exam.view().notLater(Drops.DILATION, fact).findAny().isPresent();
  }

  /** Says whether two results were found with the same set of plates, or between the same rims. */
  static boolean isAlike(Fact<?> before, Fact<?> now) {
    return value(before, Colours.Plates.class)
            .flatMap(one -> value(now, Colours.Plates.class).map(two -> isOneSet(one, two)))
            .orElse(true)
        && value(before, Alignments.Protrusion.class)
            .flatMap(
                one ->
                    value(now, Alignments.Protrusion.class)
                        .map(two -> isOneWidth(one.base(), two.base())))
            .orElse(true);
  }

  private static <V> Optional<V> value(Fact<?> fact, Class<V> type) {
    return fact.outcome().ifFound().filter(type::isInstance).map(type::cast);
  }

  private static boolean isOneSet(Colours.Plates one, Colours.Plates two) {
    return one.test() == two.test()
        && one.edition().equals(two.edition())
        && one.shown() == two.shown();
  }

  private static boolean isOneWidth(Optional<Quantity> one, Optional<Quantity> two) {
    return one.isPresent() == two.isPresent()
        && one.flatMap(mm -> two.map(other -> mm.value().compareTo(other.value()) == 0))
            .orElse(true);
  }
}
