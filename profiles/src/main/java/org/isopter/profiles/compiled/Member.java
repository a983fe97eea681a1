package org.isopter.profiles.compiled;

/**
 * A member of a type of R4.
 *
 * @param key its name in JSON, for instance {@code valueQuantity}
 * @param name its name in the standard, for instance {@code value[x]}
 * @param stem its name in FHIRPath, for instance {@code value}
 * @param table its type
 * @param bit tells it from the others of the type that has it
 * @param required whether it must be there
 * @param repeats whether there may be several
 */
record Member(
    String key,
    Name name,
    Name stem,
    TypeTable table,
    long bit,
    boolean required,
    boolean repeats) {

  /** The index of what does not repeat. */
  static final int SINGLE = -1;

  /** Returns the member that a whole resource is. */
  static Member ofResource(TypeTable table) {
    String type = table.name();
    return new Member(type, Name.of(type), Name.of(type), table, 1, true, false);
  }

  /** Returns this member as one that holds a resource of a type. */
  Member holding(TypeTable resource) {
    return new Member(key, name, stem, resource, bit, true, false);
  }

  /** Returns the type as FHIR names it; of a part of a resource, the path of its definition. */
  String type() {
    return table.name();
  }

  /** Says whether its type may be one of several. */
  boolean isChoice() {
    return stem != name;
  }
}
