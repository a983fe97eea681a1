package org.isopter.model.value;

import java.util.Map;
import java.util.concurrent.ConcurrentHashMap;

/** The words of enumeration constants, each made once: records ask for them again and again. */
final class ConceptWords {

  private static final Map<Enum<?>, String> WORDS = new ConcurrentHashMap<>();

  private ConceptWords() {}

  static String of(Enum<?> constant) {
    return WORDS.computeIfAbsent(constant, ConceptWords::make);
  }

  private static String make(Enum<?> constant) {
    return LowerCase.of(constant.name()).replace('_', '-');
  }
}
