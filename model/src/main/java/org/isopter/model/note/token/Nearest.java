package org.isopter.model.note.token;

import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeMap;
import java.util.TreeSet;
import java.util.stream.Collectors;
import java.util.stream.Stream;

/** Finds the known word that a mistyped one is nearest to. */
public final class Nearest {

  private static final int SHORTEST = 3;

  private Nearest() {}

  /** Returns the nearest of the words, all that are equally near, if near enough to be meant. */
  public static Optional<String> of(String seen, Stream<String> words) {
    int reach = seen.length() < SHORTEST ? 0 : seen.length() < 5 ? 1 : 2;
    Map<Integer, Set<String>> near = new TreeMap<>();
    words
        .filter(word -> word.length() >= SHORTEST && sameStart(word, seen))
        .filter(word -> Math.abs(word.length() - seen.length()) <= reach)
        .forEach(word -> near.computeIfAbsent(to(word, seen), d -> new TreeSet<>()).add(word));
    return near.entrySet().stream()
        .findFirst()
        .filter(nearest -> nearest.getKey() <= reach)
        .map(nearest -> String.join(" or ", nearest.getValue()));
  }

  /** Who mistypes a word seldom mistypes its first letter. */
  private static boolean sameStart(String word, String seen) {
    return word.regionMatches(true, 0, seen, 0, 1);
  }

  private static int to(String word, String seen) {
    return distance(seen, word.toLowerCase(Locale.ROOT));
  }

  /** Returns the phrases of several words that the seen word is one of. */
  public static Optional<String> phrases(String seen, Stream<String> words) {
    String phrases =
        words
            .filter(word -> word.contains(" ") && word.contains(seen))
            .filter(word -> Lexer.words(word).contains(seen))
            .distinct()
            .collect(Collectors.joining(" or "));
    return Optional.of(phrases).filter(some -> seen.length() > SHORTEST && !some.isEmpty());
  }

  /** Returns the letters to insert, remove, replace or swap with the next. */
  static int distance(String one, String other) {
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
