package org.isopter.profiles.compiled;

/**
 * A member of a type of R4.
 *
 * @param key its name in JSON, for instance {@code valueQuantity}
 * @param name its name in the standard, for instance {@code value[x]}
 * @param stem its name in FHIRPath, for instance {@code value}
 * @param type its type
 * @param required whether it must be there
 * @param repeats whether there may be several
 */
record Member(
    String key, String name, String stem, String type, boolean required, boolean repeats) {

  /** The index of what does not repeat. */
  static final int SINGLE = -1;

  /** Returns the member that a whole resource is. */
  static Member ofResource(String type) {
    return new Member(type, type, type, type, true, false);
  }

  /** Says whether its type may be one of several. */
  boolean isChoice() {
    return !stem.equals(name);
  }
}
