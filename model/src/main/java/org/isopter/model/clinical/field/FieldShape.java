package org.isopter.model.clinical.field;

import java.util.Optional;
import org.isopter.model.catalogue.Fields.Confrontation;

/** Which eyes' fields are reduced, and whether in one half of both. */
public enum FieldShape {
  FULL("full"),
  RIGHT_EYE("reduced in the right eye alone"),
  LEFT_EYE("reduced in the left eye alone"),
  RIGHT_HALF("reduced in the right half of both eyes"),
  LEFT_HALF("reduced in the left half of both eyes"),
  OTHER("reduced in both eyes");

  private final String words;

  FieldShape(String words) {
    this.words = words;
  }

  /** Returns the shape in words. */
  public String words() {
    return words;
  }

  /** Returns the shape of two confrontation tests; nothing when a quadrant was not tested. */
  public static Optional<FieldShape> of(Confrontation right, Confrontation left) {
    return FieldSigns.of(right, left).map(SidedPattern::of).map(FieldShape::of);
  }

  private static FieldShape of(SidedPattern sided) {
    boolean right = sided.side() == PathwayPlace.Side.RIGHT;
    return switch (sided.pattern()) {
      case NO_REGION_REDUCED -> FULL;
      case ONE_EYE, ONE_EYE_CENTRAL, ONE_EYE_ALTITUDINAL, ONE_EYE_TEMPORAL, ONE_EYE_ALL ->
          right ? RIGHT_EYE : LEFT_EYE;
      case HOMONYMOUS_HALF, HOMONYMOUS_UPPER, HOMONYMOUS_LOWER, HOMONYMOUS_SECTOR ->
          right ? RIGHT_HALF : LEFT_HALF;
      default -> OTHER;
    };
  }
}
