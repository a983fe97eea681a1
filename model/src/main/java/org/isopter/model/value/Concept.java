package org.isopter.model.value;

import java.util.List;
import java.util.Locale;

/**
 * One of a closed list of answers: the word a record uses for it and the code it travels under.
 *
 * <p>Enumerations of the catalogue implement this; each constant has exactly one code, a verified
 * SNOMED CT code where there is one and our own otherwise.
 */
public interface Concept {

  /** Returns the word that a record uses, in lower case with hyphens. */
  String word();

  /** Returns the code that the concept travels under. */
  Code code();

  /**
   * Returns the codes that older versions wrote in its place; they are read and never written.
   *
   * <p>An enumeration constant that has a published code once travelled under our own.
   */
  default List<Code> formerCodes() {
    return this instanceof Enum<?> constant && !code().isLocal()
        ? List.of(local(constant, code().display()))
        : List.of();
  }

  /** Returns the word of an enumeration constant: its name in lower case with hyphens. */
  static String word(Enum<?> constant) {
    return ConceptWords.of(constant);
  }

  /** Returns our own code for an enumeration constant, in a code system named after its type. */
  static Code local(Enum<?> constant, String display) {
    return Code.local(listOf(constant.getDeclaringClass()), word(constant), display);
  }

  /** Returns the name of the list that an enumeration stands for: its type name with hyphens. */
  static String listOf(Class<?> type) {
    return type.getSimpleName().replaceAll("(?<=[a-z])(?=[A-Z])", "-").toLowerCase(Locale.ROOT);
  }
}
