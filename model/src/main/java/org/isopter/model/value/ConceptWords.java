package org.isopter.model.value;

import java.util.Map;
import java.util.concurrent.ConcurrentHashMap;

/** The words of enumeration constants, each made once: records ask for them again and again. */
final class ConceptWords {

  private static final Map<Enum<?>, String> WORDS = new ConcurrentHashMap<>();

  private ConceptWords() {}

  static String of(Enum<?> constant) {
    // Of many threads that ask for what is there, none waits for another.
    String known = WORDS.get(constant);
    return known == null ? WORDS.computeIfAbsent(constant, ConceptWords::make) : known;
  }

  private static String make(Enum<?> constant) {
    return LowerCase.of(constant.name()).replace('_', '-');
  }
}
