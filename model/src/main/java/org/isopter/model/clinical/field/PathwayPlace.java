package org.isopter.model.clinical.field;

/**
 * A place on the visual pathway.
 *
 * @param part the part of the pathway
 * @param side its side
 */
public record PathwayPlace(Pathway part, Side side) {

  /** The side of a place. */
  public enum Side {
    RIGHT("right ", ""),
    LEFT("left ", ""),
    MIDLINE("", ""),
    BILATERAL("", " on both sides");

    private final String before;
    private final String behind;

    Side(String before, String behind) {
      this.before = before;
      this.behind = behind;
    }

    /** Returns the side seen in a mirror. */
    public Side mirrored() {
      return this == RIGHT ? LEFT : this == LEFT ? RIGHT : this;
    }
  }

  /** Returns the place seen in a mirror. */
  public PathwayPlace mirrored() {
    return new PathwayPlace(part, side.mirrored());
  }

  /** Says whether this place is the other or lies within it. */
  public boolean isWithin(PathwayPlace other) {
    return side == other.side && part.isWithin(other.part);
  }

  /** Returns the place in words. */
  @Override
  public String toString() {
    return side.before + part.words() + side.behind;
  }
}
