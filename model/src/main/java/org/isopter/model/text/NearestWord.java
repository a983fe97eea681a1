package org.isopter.model.text;

import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import java.util.TreeSet;
import java.util.stream.Stream;
import org.isopter.model.value.LowerCase;

/** Finds the known words that a mistyped one is nearest to; they are only ever suggested. */
public final class NearestWord {

  private static final int SHORTEST = 3;

  private NearestWord() {}

  /**
   * Returns the word with the fewest slips between it and what was seen, with all that have as few,
   * in order. None is returned where the nearest is too far away to be meant: words under three
   * letters are suggested never, up to four letters for one slip, longer ones for two.
   *
   * @param seen what was written, in capitals or not
   * @param words the words that would be understood
   */
  public static List<String> of(String seen, Stream<String> words) {
    String plain = LowerCase.of(seen);
    int reach = plain.length() < SHORTEST ? 0 : plain.length() < 5 ? 1 : 2;
    Map<Integer, Set<String>> near = new TreeMap<>();
    words
        .filter(word -> word.length() >= SHORTEST && hasSameStart(word, plain))
        .filter(word -> Math.abs(word.length() - plain.length()) <= reach)
        .forEach(word -> near.computeIfAbsent(slips(word, plain), d -> new TreeSet<>()).add(word));
    return near.entrySet().stream()
        .findFirst()
        .filter(nearest -> nearest.getKey() <= reach)
        .map(nearest -> List.copyOf(nearest.getValue()))
        .orElse(List.of());
  }

  /** Who mistypes a word seldom mistypes its first letter. */
  private static boolean hasSameStart(String word, String seen) {
    return word.regionMatches(true, 0, seen, 0, 1);
  }

  private static int slips(String word, String seen) {
    return distance(seen, LowerCase.of(word));
  }

  /**
   * Returns how many letters are to be inserted, removed, replaced or swapped with the next to make
   * one word of the other (optimal string alignment).
   */
  public static int distance(String one, String other) {
    int[][] steps = new int[one.length() + 1][other.length() + 1];
    for (int i = 0; i <= one.length(); i++) {
      for (int j = 0; j <= other.length(); j++) {
        steps[i][j] = i == 0 || j == 0 ? i + j : step(steps, one, other, i, j);
      }
    }
    return steps[one.length()][other.length()];
  }

  private static int step(int[][] steps, String one, String other, int i, int j) {
    int change = one.charAt(i - 1) == other.charAt(j - 1) ? 0 : 1;
    int best =
        Math.min(Math.min(steps[i - 1][j], steps[i][j - 1]) + 1, steps[i - 1][j - 1] + change);
    boolean swapped =
        i > 1
            && j > 1
            && one.charAt(i - 1) == other.charAt(j - 2)
            && one.charAt(i - 2) == other.charAt(j - 1);
    return swapped ? Math.min(best, steps[i - 2][j - 2] + 1) : best;
  }
}
