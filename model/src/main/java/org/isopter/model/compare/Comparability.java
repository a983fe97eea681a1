package org.isopter.model.compare;

import java.util.Optional;
import java.util.Set;
import org.isopter.model.catalogue.Alignments;
import org.isopter.model.catalogue.Colours;
import org.isopter.model.catalogue.Drops;
import org.isopter.model.catalogue.Pupils;
import org.isopter.model.exam.Exam;
import org.isopter.model.exam.Fact;
import org.isopter.model.finding.Finding;
import org.isopter.model.value.Quantity;

/** What else keeps two results of one measurement from being compared; common practice. */
final class Comparability {

  private static final Set<Finding<?>> OF_THE_PUPIL =
      Set.of(
          Pupils.SIZE,
          Pupils.EQUALITY,
          Pupils.OUTLINE,
          Pupils.DIRECT,
          Pupils.CONSENSUAL,
          Pupils.NEAR,
          Pupils.AFFERENT_DEFECT,
          Pupils.FEATURE);

  private Comparability() {}

  /** Says whether a finding is one of pupils of which drops that widen them are recorded. */
  static boolean isUnderDrops(Finding<?> finding, Exam earlier, Exam later) {
    return OF_THE_PUPIL.contains(finding) && (hasDrops(earlier) || hasDrops(later));
  }

  private static boolean hasDrops(Exam exam) {
    return exam.view().seen(Drops.DILATION).findAny().isPresent();
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
