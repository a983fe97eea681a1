package org.isopter.model.check;

import static org.isopter.model.check.ConsistencyRule.contradictory;
import static org.isopter.model.check.ConsistencyRule.implausible;
import static org.isopter.model.check.ConsistencyRule.impossible;

import java.util.EnumSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Stream;
import org.isopter.model.answer.movement.DoubleVision;
import org.isopter.model.answer.movement.GazeDirection;
import org.isopter.model.answer.movement.NystagmusKind;
import org.isopter.model.answer.tissue.GlobeState;
import org.isopter.model.answer.tissue.Presence;
import org.isopter.model.catalogue.Alignments;
import org.isopter.model.catalogue.Globes;
import org.isopter.model.catalogue.Lids;
import org.isopter.model.catalogue.Movements;
import org.isopter.model.catalogue.Movements.Ductions;
import org.isopter.model.catalogue.Movements.Nystagmus;
import org.isopter.model.check.sight.Sight;
import org.isopter.model.exam.EyeView;
import org.isopter.model.exam.Seen;
import org.isopter.model.value.Outcome;
import org.isopter.model.value.Site;

/** Rules about eye movements, double vision and nystagmus. */
final class MovementRules {

  private static final int CLEARLY_LESS = -2;

  /** An eye that goes a quarter of the way or less; common practice, no source. */
  private static final int HARDLY = -3;

  private static final Map<NystagmusKind, Set<GazeDirection>> PHASES =
      Map.of(
          NystagmusKind.UPBEAT,
          EnumSet.of(GazeDirection.UP, GazeDirection.UP_LEFT, GazeDirection.UP_RIGHT),
          NystagmusKind.DOWNBEAT,
          EnumSet.of(GazeDirection.DOWN, GazeDirection.DOWN_LEFT, GazeDirection.DOWN_RIGHT),
          NystagmusKind.HORIZONTAL_JERK,
          EnumSet.of(
              GazeDirection.LEFT,
              GazeDirection.RIGHT,
              GazeDirection.UP_LEFT,
              GazeDirection.UP_RIGHT,
              GazeDirection.DOWN_LEFT,
              GazeDirection.DOWN_RIGHT));

  private MovementRules() {}

  static List<ConsistencyRule> all() {
    return List.of(
        doubleButFull(),
        monocularButWeak(),
        singleButWeak(),
        phaseAgainstKind(),
        pendularWithFastPhase(),
        noneButSome());
  }

  private static ConsistencyRule doubleButFull() {
    return implausible("double-but-movements-full", Severity.INFORMATION)
        .what("Double vision of both eyes together is stated, and every movement tested is full.")
        .why("A small deviation is not seen by the naked eye, so both may be true.")
        .on(Movements.DIPLOPIA, Movements.DUCTIONS)
        .wanted("the movement that is short, or a remark that a cover test was done")
        .settledByRemark()
        .suggest("test the gaze in which the images lie farthest apart")
        .pair(
            both ->
                both.seen(Movements.DIPLOPIA, one -> one.kind() == DoubleVision.BINOCULAR)
                    .filter(seen -> Reflexes.eyes(both).allMatch(eye -> isFull(eye, seen)))
                    .map(Breach::of));
  }

  private static boolean isFull(EyeView eye, Seen<?> at) {
    return eye.beside(at, Movements.DUCTIONS, MovementRules::isFull).isPresent()
        && eye.beside(at, Movements.DUCTIONS, moves -> !isFull(moves)).isEmpty();
  }

  private static boolean isFull(Ductions moves) {
    return grades(moves).findAny().isPresent() && grades(moves).allMatch(grade -> grade == 0);
  }

  private static Stream<Integer> grades(Ductions moves) {
    return moves.grades().values().stream().flatMap(outcome -> outcome.ifFound().stream());
  }

  private static ConsistencyRule monocularButWeak() {
    return implausible("monocular-but-movement-short", Severity.INFORMATION)
        .what("Double vision is of one eye alone, and a movement falls short by 2 or more.")
        .why("A weak movement doubles with both eyes open; one eye alone doubles by its optics.")
        .on(Movements.DIPLOPIA, Movements.DUCTIONS)
        .wanted("binocular, or a remark that it stays with the fellow eye covered")
        .settledByRemark()
        .suggest("cover each eye in turn and ask again")
        .pair(
            both ->
                both.seen(Movements.DIPLOPIA, one -> one.kind() == DoubleVision.MONOCULAR)
                    .flatMap(
                        seen ->
                            Reflexes.eyes(both)
                                .flatMap(
                                    eye ->
                                        eye
                                            .beside(
                                                seen, Movements.DUCTIONS, MovementRules::isShort)
                                            .map(moves -> Breach.of(seen, moves))
                                            .stream())
                                .limit(1)));
  }

  private static boolean isShort(Ductions moves) {
    return grades(moves).anyMatch(grade -> grade <= CLEARLY_LESS);
  }

  private static ConsistencyRule singleButWeak() {
    return implausible("no-double-vision-but-movement-short", Severity.INFORMATION)
        .what(
            "There is no double vision, and one eye hardly moves in a gaze in which the other does.")
        .why(
            "Two eyes that see, one of which is left behind, see double, unless one is suppressed.")
        .on(Movements.DIPLOPIA, Movements.DUCTIONS)
        .wanted("double vision, or a remark that one image is suppressed or the eye was covered")
        .settledByRemark()
        .suggest("ask again in the gaze in which the eye is left behind")
        .pair(
            both ->
                both.seen(Movements.DIPLOPIA, one -> one.kind() == DoubleVision.NONE)
                    .filter(seen -> mustBothBeUsed(both, seen))
                    .flatMap(
                        seen ->
                            Reflexes.eyes(both)
                                .flatMap(eye -> leftBehind(eye, seen))
                                .map(moves -> Breach.of(seen, moves))
                                .limit(1)));
  }

  /** An eye that is closed or sees far worse doubles nothing, and who turns the head avoids it. */
  private static boolean mustBothBeUsed(EyeView both, Seen<?> at) {
    boolean headTurned =
        both.beside(at, Alignments.HEAD_POSTURE, posture -> !posture.word().equals("straight"))
            .isPresent();
    return !headTurned
        && Reflexes.eyes(both)
            .noneMatch(
                eye ->
                    Reflexes.isBlindBeside(eye, at)
                        || Sight.farWorseFellow(eye, at).findAny().isPresent()
                        || eye.has(Globes.STATE, GlobeState::isSightless)
                        || eye.has(Lids.PTOSIS, lid -> lid.presence() != Presence.ABSENT));
  }

  private static Stream<Seen<Ductions>> leftBehind(EyeView eye, Seen<?> at) {
    return eye
        .beside(at, Movements.DUCTIONS, MovementRules::isShort)
        .filter(
            own ->
                eye.fellow()
                    .beside(at, Movements.DUCTIONS, other -> isLeftBehind(own.value(), other))
                    .isPresent())
        .stream();
  }

  private static boolean isLeftBehind(Ductions own, Ductions other) {
    return own.grades().entrySet().stream()
        .anyMatch(
            gaze ->
                gaze.getValue().ifFound().filter(grade -> grade <= HARDLY).isPresent()
                    && Optional.ofNullable(other.grades().get(gaze.getKey()))
                        .flatMap(Outcome::ifFound)
                        .filter(grade -> grade >= 0)
                        .isPresent());
  }

  private static ConsistencyRule phaseAgainstKind() {
    return contradictory("nystagmus-phase-against-kind", Severity.ERROR)
        .what("The fast phase of a nystagmus beats in another direction than its name.")
        .why("Nystagmus is named after its fast phase.")
        .on(Movements.NYSTAGMUS)
        .wanted("a fast phase upward in upbeat, downward in downbeat, sideways in horizontal jerk")
        .suggest("correct the kind or the direction")
        .everywhere(
            eye ->
                eye.seen(Movements.NYSTAGMUS, MovementRules::isMisnamed)
                    .map(seen -> Breach.of(seen).in("fast-phase")));
  }

  private static boolean isMisnamed(Nystagmus nystagmus) {
    return PHASES.containsKey(nystagmus.kind())
        && nystagmus
            .fast()
            .filter(fast -> !PHASES.getOrDefault(nystagmus.kind(), Set.of()).contains(fast))
            .isPresent();
  }

  private static ConsistencyRule pendularWithFastPhase() {
    return contradictory("pendular-with-fast-phase", Severity.WARNING)
        .what("A pendular nystagmus has a fast phase.")
        .why("A pendular nystagmus swings at one speed; it may turn into a jerk to the side.")
        .on(Movements.NYSTAGMUS)
        .wanted("no fast phase, or a jerk nystagmus")
        .suggest("record the jerk in side gaze as a second nystagmus")
        .everywhere(
            eye ->
                eye.seen(
                        Movements.NYSTAGMUS,
                        one -> one.kind() == NystagmusKind.PENDULAR && one.fast().isPresent())
                    .map(seen -> Breach.of(seen).in("fast-phase")));
  }

  private static ConsistencyRule noneButSome() {
    return impossible("no-nystagmus-but-some")
        .what("Neither eye has nystagmus, and one of them has.")
        .why("None of both eyes is none of either.")
        .on(Movements.NYSTAGMUS)
        .wanted("none, or the kind that was seen, not both")
        .suggest("remove one of the entries")
        .pair(
            both ->
                both.seen(Movements.NYSTAGMUS, MovementRules::isNone)
                    .flatMap(
                        none ->
                            Stream.of(Site.values())
                                .flatMap(
                                    site ->
                                        both
                                            .at(site)
                                            .beside(none, Movements.NYSTAGMUS, one -> !isNone(one))
                                            .map(some -> Breach.of(none, some))
                                            .stream())
                                .limit(1)));
  }

  private static boolean isNone(Nystagmus nystagmus) {
    return nystagmus.kind() == NystagmusKind.NONE;
  }
}
