package org.isopter.model.value;

/**
 * A concept that is a plain value, for lists that need no Java type of their own.
 *
 * @param word the word that a record uses
 * @param code the code that the concept travels under
 */
public record Term(String word, Code code) implements Concept {}
