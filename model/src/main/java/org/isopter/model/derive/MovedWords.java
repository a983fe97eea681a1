package org.isopter.model.derive;

import java.util.EnumSet;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.function.Function;
import java.util.stream.Collectors;
import org.isopter.model.answer.movement.GazeDirection;
import org.isopter.model.catalogue.Movements.Ductions;
import org.isopter.model.value.Outcome;
import org.isopter.model.value.Site;

/** Which nerve's muscles a limited movement may be of, as far as the pupils ask. */
final class MovedWords {

  private static final Set<GazeDirection> UPWARD =
      EnumSet.of(GazeDirection.UP, GazeDirection.UP_LEFT, GazeDirection.UP_RIGHT);

  private MovedWords() {}

  static Function<Ductions, Set<String>> of(Site eye) {
    GazeDirection outward = eye == Site.RIGHT ? GazeDirection.RIGHT : GazeDirection.LEFT;
    return moves -> words(moves, outward);
  }

  private static Set<String> words(Ductions moves, GazeDirection outward) {
    Set<GazeDirection> limited = limited(moves);
    if (limited.isEmpty()) {
      boolean tested = moves.grades().values().stream().anyMatch(one -> one.ifFound().isPresent());
      return tested ? Set.of("full") : Set.of();
    }
    if (UPWARD.containsAll(limited)) {
      return Set.of("up");
    }
    if (limited.equals(EnumSet.of(outward))) {
      return Set.of("abduction");
    }
    return Set.of(limited.contains(outward) ? "several" : "third");
  }

  private static Set<GazeDirection> limited(Ductions moves) {
    return moves.grades().entrySet().stream()
        .filter(one -> grade(one.getValue()).filter(grade -> grade < 0).isPresent())
        .map(Map.Entry::getKey)
        .collect(Collectors.toSet());
  }

  private static Optional<Integer> grade(Outcome<Integer> outcome) {
    return outcome.ifFound();
  }

  static String said(Ductions moves) {
    Set<GazeDirection> limited = limited(moves);
    return limited.isEmpty()
        ? "not limited where tested"
        : "limited on looking "
            + String.join(", ", limited.stream().sorted().map(MovedWords::gaze).toList());
  }

  private static String gaze(GazeDirection gaze) {
    return gaze == GazeDirection.PRIMARY ? "straight ahead" : gaze.word().replace("-", " and ");
  }
}
