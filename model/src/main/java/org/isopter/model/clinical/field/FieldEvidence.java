package org.isopter.model.clinical.field;

import java.util.stream.Stream;
import org.isopter.model.answer.pupil.DefectSide;

/**
 * The details of a field, seen from the side of its pattern.
 *
 * @param afferent whether the afferent defect is on the side of the pattern, elsewhere, or nowhere
 * @param looksIncongruous whether a part is lost in one eye and not touched in the other; how deep
 *     each loss is says nothing, for by confrontation it is judged and not measured
 * @param signs the fields with what is known beside them
 */
record FieldEvidence(Afferent afferent, boolean looksIncongruous, FieldSigns signs) {

  enum Afferent {
    UNKNOWN,
    NONE,
    SAME_SIDE,
    OTHER_SIDE
  }

  static FieldEvidence of(FieldSigns signs, PathwayPlace.Side side) {
    return new FieldEvidence(
        signs.details().afferent().map(eye -> relative(eye, side)).orElse(Afferent.UNKNOWN),
        looksIncongruous(signs, side),
        signs);
  }

  private FieldDetails details() {
    return signs.details();
  }

  private static Afferent relative(DefectSide eye, PathwayPlace.Side side) {
    return switch (eye) {
      case NONE -> Afferent.NONE;
      case EQUIVOCAL -> Afferent.UNKNOWN;
      case RIGHT -> side == PathwayPlace.Side.RIGHT ? Afferent.SAME_SIDE : Afferent.OTHER_SIDE;
      case LEFT -> side == PathwayPlace.Side.LEFT ? Afferent.SAME_SIDE : Afferent.OTHER_SIDE;
    };
  }

  private static boolean looksIncongruous(FieldSigns signs, PathwayPlace.Side side) {
    EyeField temporal = side == PathwayPlace.Side.RIGHT ? signs.right() : signs.left();
    EyeField nasal = side == PathwayPlace.Side.RIGHT ? signs.left() : signs.right();
    // The nasal bits are the temporal ones moved by one place.
    return (temporal.lost() & EyeField.TEMPORAL) != (nasal.lost() & EyeField.NASAL) >> 1;
  }

  boolean afferentIs(Afferent one, Afferent two) {
    return afferent == Afferent.UNKNOWN || afferent == one || afferent == two;
  }

  boolean isIncongruous() {
    return !details().congruous().orElse(true);
  }

  boolean mayRespectVertical() {
    return details().vertical().orElse(true);
  }

  boolean mayCrossVertical() {
    return !details().vertical().orElse(false);
  }

  boolean mayBeSpared() {
    return details().macularSparing().orElse(true);
  }

  boolean mayBeSplit() {
    return !details().macularSparing().orElse(false);
  }

  boolean isSpared() {
    return details().macularSparing().orElse(false);
  }

  boolean isCrescentSpared() {
    return details().crescentSpared().orElse(false);
  }

  /** Clouded media spare no centre of a field of which the quadrants are lost. */
  boolean mayBeClouded() {
    return Stream.of(signs.right(), signs.left())
        .filter(eye -> eye.lost() == EyeField.ALL)
        .allMatch(eye -> eye.central().isEmpty() || eye.isCentreLost());
  }

  /** Says whether a temporal quadrant is lost in either eye. */
  boolean temporalInBoth() {
    return (signs.right().lost() & EyeField.TEMPORAL) != 0
        && (signs.left().lost() & EyeField.TEMPORAL) != 0;
  }
}
