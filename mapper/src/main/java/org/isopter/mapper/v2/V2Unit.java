package org.isopter.mapper.v2;

import java.util.List;
import java.util.Locale;
import java.util.stream.Stream;

/**
 * The unit of an OBX segment (OBX-6).
 *
 * @param code its code, or what was written of it; empty where there is none
 * @param name its name; may be empty
 * @param system the name of its code system; may be empty
 * @param others the codes and names of the same in another system
 */
record V2Unit(String code, String name, String system, List<String> others) {

  private static final int FIELD = 6;

  V2Unit {
    others = List.copyOf(others);
  }

  static V2Unit of(V2Segment segment) {
    String field = segment.raw(FIELD);
    List<String> others =
        Stream.of(4, 5, 9)
            .map(component -> segment.component(field, component))
            .filter(text -> !text.isEmpty())
            .toList();
    return new V2Unit(
        segment.component(field, 1),
        segment.component(field, 2),
        segment.component(field, 3),
        others);
  }

  boolean isUcum() {
    return system.equals("UCUM");
  }

  /** Returns false if the unit may be two: whoever reads further compares a code and a name. */
  boolean isOne() {
    boolean named = isUcum() || isName(name);
    return named && others.stream().allMatch(other -> same(other, name) || isName(other));
  }

  /** Returns true if a text writes the code with other marks between the letters, or is empty. */
  boolean isName(String text) {
    return text.isEmpty() || same(text, code);
  }

  private static boolean same(String one, String other) {
    return letters(one).equals(letters(other));
  }

  private static String letters(String text) {
    String letters = text.replaceAll("[^\\p{L}\\p{N}]", "").toLowerCase(Locale.ROOT);
    return letters.isEmpty() ? text : letters;
  }
}
