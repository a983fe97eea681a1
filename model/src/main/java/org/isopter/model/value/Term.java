package org.isopter.model.value;

import java.util.List;

/**
 * A concept that is a plain value, for lists that need no Java type of their own.
 *
 * @param word the word that a record uses
 * @param code the code that the concept travels under
 * @param formerCodes the codes that older versions wrote in its place
 */
public record Term(String word, Code code, List<Code> formerCodes) implements Concept {

  public Term {
    formerCodes = List.copyOf(formerCodes);
  }

  /** Makes a concept that has always travelled under its code. */
  public Term(String word, Code code) {
    this(word, code, List.of());
  }
}
