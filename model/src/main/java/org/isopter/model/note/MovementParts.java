package org.isopter.model.note;

import java.util.ArrayList;
import java.util.Collections;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.isopter.model.answer.movement.GazeDirection;
import org.isopter.model.catalogue.Movements;
import org.isopter.model.exam.Fact;
import org.isopter.model.value.Outcome;
import org.isopter.model.value.Site;

/**
 * The movements of an eye in several items, each of other directions: {@code R abd -2. R add full}.
 * They are one finding of the eye.
 */
final class MovementParts {

  private MovementParts() {}

  /** Says whether two facts tell of other directions of one eye, and of nothing besides. */
  static boolean are(Fact<?> one, Fact<?> other) {
    boolean bothPlain = isPlain(one) && isPlain(other) && one.site() == other.site();
    return bothPlain && Collections.disjoint(grades(one).keySet(), grades(other).keySet());
  }

  /** Returns the facts with the movements of an eye in one. */
  static List<Fact<?>> joined(List<Fact<?>> facts) {
    List<Fact<?>> joined = new ArrayList<>();
    for (Fact<?> fact : facts) {
      Optional<Fact<?>> before = joined.stream().filter(one -> are(one, fact)).findFirst();
      if (before.isPresent()) {
        joined.set(joined.indexOf(before.get()), both(before.get(), fact));
      } else {
        joined.add(fact);
      }
    }
    return List.copyOf(joined);
  }

  private static boolean isPlain(Fact<?> fact) {
    return fact.finding().equals(Movements.DUCTIONS)
        && fact.outcome().ifFound().isPresent()
        && fact.method().isEmpty()
        && fact.at().isEmpty()
        && fact.remarks().isEmpty();
  }

  private static Map<GazeDirection, Outcome<Integer>> grades(Fact<?> fact) {
    return fact.outcome()
        .ifFound()
        .filter(Movements.Ductions.class::isInstance)
        .map(found -> ((Movements.Ductions) found).grades())
        .orElse(Map.of());
  }

  private static Fact<Movements.Ductions> both(Fact<?> one, Fact<?> other) {
    Map<GazeDirection, Outcome<Integer>> grades = new EnumMap<>(GazeDirection.class);
    grades.putAll(grades(one));
    grades.putAll(grades(other));
    Site eye = one.site();
    return Fact.of(Movements.DUCTIONS, eye, new Movements.Ductions(grades));
  }
}
