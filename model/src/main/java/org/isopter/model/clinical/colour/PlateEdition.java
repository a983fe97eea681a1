package org.isopter.model.clinical.colour;

import java.util.Arrays;
import java.util.Optional;

/**
 * An edition of the Ishihara plates; only the first plates are scored. Source: the maker's sheet,
 * of 14 plates as quoted, of the others from memory.
 */
public enum PlateEdition {
  PLATES_14(14, 11),
  PLATES_24(24, 15),
  PLATES_38(38, 21);

  private final int plates;
  private final int scored;

  PlateEdition(int plates, int scored) {
    this.plates = plates;
    this.scored = scored;
  }

  /** Returns the number of plates in the edition. */
  public int plates() {
    return plates;
  }

  /** Returns how many of them, from the first on, are scored. */
  public int scored() {
    return scored;
  }

  /** Returns the edition with so many plates, or nothing. */
  public static Optional<PlateEdition> of(int plates) {
    return Arrays.stream(values()).filter(edition -> edition.plates == plates).findFirst();
  }
}
