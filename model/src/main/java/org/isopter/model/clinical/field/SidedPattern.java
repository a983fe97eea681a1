package org.isopter.model.clinical.field;

import static org.isopter.model.clinical.field.EyeField.ALL;
import static org.isopter.model.clinical.field.EyeField.LOWER;
import static org.isopter.model.clinical.field.EyeField.LOWER_TEMPORAL;
import static org.isopter.model.clinical.field.EyeField.NASAL;
import static org.isopter.model.clinical.field.EyeField.TEMPORAL;
import static org.isopter.model.clinical.field.EyeField.UPPER;
import static org.isopter.model.clinical.field.EyeField.UPPER_TEMPORAL;

import java.util.Optional;
import java.util.function.Function;

/**
 * A pattern and its side: the eye of a loss in one eye, the eye with the central loss at the
 * junction, the lost half of a homonymous loss; the midline for all others.
 *
 * @param pattern the pattern
 * @param side the side
 * @param half whether the losses of a junction lie in one half of both eyes' fields as well
 */
record SidedPattern(FieldPattern pattern, PathwayPlace.Side side, boolean half) {

  SidedPattern(FieldPattern pattern, PathwayPlace.Side side) {
    this(pattern, side, false);
  }

  static SidedPattern of(FieldSigns signs) {
    return sided(signs, SidedPattern::junction)
        .or(() -> sided(signs, SidedPattern::ofRight))
        .orElseGet(() -> new SidedPattern(ofBoth(signs), PathwayPlace.Side.MIDLINE));
  }

  /** Looks for a pattern of the right side, then in a mirror for one of the left. */
  private static Optional<SidedPattern> sided(
      FieldSigns signs, Function<FieldSigns, Optional<FieldPattern>> ofRight) {
    FieldSigns mirrored = signs.mirrored();
    return ofRight
        .apply(signs)
        .map(found -> new SidedPattern(found, PathwayPlace.Side.RIGHT, isOneHalf(signs)))
        .or(
            () ->
                ofRight
                    .apply(mirrored)
                    .map(
                        found ->
                            new SidedPattern(found, PathwayPlace.Side.LEFT, isOneHalf(mirrored))));
  }

  private static Optional<FieldPattern> junction(FieldSigns signs) {
    return isJunctional(signs) ? Optional.of(FieldPattern.JUNCTIONAL) : Optional.empty();
  }

  /** Says whether the eye with the central loss has lost the nasal part that the other shares. */
  private static boolean isOneHalf(FieldSigns signs) {
    int worse = signs.right().lost();
    return isPart(worse, NASAL) && (signs.left().lost() & (worse >> 1)) != 0;
  }

  /** Returns the pattern when it is one of the right side. */
  private static Optional<FieldPattern> ofRight(FieldSigns signs) {
    if (signs.left().isUntouched() && !signs.right().isUntouched() && !signs.sector()) {
      return Optional.of(ofOneEye(signs.right()));
    }
    return isHomonymous(signs) ? Optional.of(homonymous(signs)) : Optional.empty();
  }

  private static FieldPattern ofOneEye(EyeField eye) {
    int lost = eye.lost();
    if (lost == 0) {
      return FieldPattern.ONE_EYE_CENTRAL;
    }
    if (lost == ALL) {
      return FieldPattern.ONE_EYE_ALL;
    }
    if (eye.isCentreLost()) {
      return FieldPattern.ONE_EYE;
    }
    return lost == TEMPORAL
        ? FieldPattern.ONE_EYE_TEMPORAL
        : lost == UPPER || lost == LOWER ? FieldPattern.ONE_EYE_ALTITUDINAL : FieldPattern.ONE_EYE;
  }

  private static boolean isJunctional(FieldSigns signs) {
    EyeField worse = signs.right();
    EyeField other = signs.left();
    boolean temporal = isPart(other.lost(), TEMPORAL) && !other.isCentreLost();
    return temporal && !signs.sector() && (worse.isCentreLost() || worse.lost() == ALL);
  }

  /** The right half of the field is temporal to the right eye and nasal to the left. */
  private static boolean isHomonymous(FieldSigns signs) {
    int right = signs.right().lost();
    int left = signs.left().lost();
    // The nasal bits are the temporal ones moved by one place.
    boolean shared = (right & (left >> 1)) != 0;
    return isPart(right, TEMPORAL) && isPart(left, NASAL) && shared;
  }

  private static FieldPattern homonymous(FieldSigns signs) {
    if (signs.sector()) {
      return FieldPattern.HOMONYMOUS_SECTOR;
    }
    int lost = signs.right().lost() | (signs.left().lost() >> 1);
    return lost == UPPER_TEMPORAL
        ? FieldPattern.HOMONYMOUS_UPPER
        : lost == LOWER_TEMPORAL ? FieldPattern.HOMONYMOUS_LOWER : FieldPattern.HOMONYMOUS_HALF;
  }

  private static FieldPattern ofBoth(FieldSigns signs) {
    EyeField right = signs.right();
    EyeField left = signs.left();
    if (signs.sector()) {
      return FieldPattern.OTHER;
    }
    if (right.isUntouched() && left.isUntouched()) {
      return FieldPattern.NO_REGION_REDUCED;
    }
    if (right.isCentreLost() && left.isCentreLost() && (right.lost() | left.lost()) == 0) {
      return FieldPattern.BOTH_EYES_CENTRAL;
    }
    if (right.lost() == ALL && left.lost() == ALL) {
      return FieldPattern.BOTH_EYES_ALL;
    }
    int altitude = right.lost() | left.lost();
    if (right.lost() == left.lost() && (altitude == UPPER || altitude == LOWER)) {
      return FieldPattern.BOTH_EYES_ALTITUDINAL;
    }
    boolean centre = right.isCentreLost() || left.isCentreLost();
    return centre ? FieldPattern.OTHER : ofHalves(right.lost(), left.lost());
  }

  private static FieldPattern ofHalves(int right, int left) {
    if (isPart(right, NASAL) && isPart(left, NASAL)) {
      return FieldPattern.BINASAL;
    }
    if (!isPart(right, TEMPORAL) || !isPart(left, TEMPORAL)) {
      return FieldPattern.OTHER;
    }
    int lost = right | left;
    return lost == UPPER_TEMPORAL
        ? FieldPattern.BITEMPORAL_UPPER
        : lost == LOWER_TEMPORAL ? FieldPattern.BITEMPORAL_LOWER : FieldPattern.BITEMPORAL;
  }

  /** Says whether there is a loss and all of it lies in a part. */
  private static boolean isPart(int lost, int part) {
    return lost != 0 && (lost & ~part) == 0;
  }
}
