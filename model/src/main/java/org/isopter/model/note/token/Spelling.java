package org.isopter.model.note.token;

import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.stream.Collectors;
import org.isopter.model.text.Memo;
import org.isopter.model.text.NearestWord;

/** Mends a mistyped word where one known word is near and no other is. */
public final class Spelling {

  private static final int SHORTEST = 5;

  /** Words with so many first letters in common are of one root. */
  private static final int STEM = 5;

  private final Set<String> known;
  private final Map<Character, List<String>> byFirst;
  private final Memo<String> mended = new Memo<>(this::meant);

  public Spelling(Set<String> known) {
    this.known = Set.copyOf(known);
    this.byFirst =
        known.stream()
            .filter(word -> word.length() >= SHORTEST)
            .collect(Collectors.groupingBy(word -> word.charAt(0)));
  }

  /** Says whether a word is known as it is written. */
  public boolean knows(String word) {
    return known.contains(word);
  }

  /** Returns the token, or the one word that it can be a slip of. */
  public Token mend(Token token) {
    boolean whole = token.kind() != Token.Kind.WORD || known.contains(token.text());
    if (whole || token.text().length() < SHORTEST) {
      return token;
    }
    String meant = mended.of(token.text());
    return meant.equals(token.text()) ? token : token.saying(meant);
  }

  private String meant(String seen) {
    List<String> near =
        byFirst.getOrDefault(seen.charAt(0), List.of()).stream()
            .filter(word -> isNear(word, seen, 2))
            .toList();
    List<String> next = near.stream().filter(word -> isNear(word, seen, 1)).toList();
    List<String> swapped = next.stream().filter(word -> isSwapped(word, seen)).toList();
    if (swapped.size() == 1) {
      return swapped.get(0);
    }
    boolean one = next.size() == 1 && near.stream().allMatch(w -> isAkin(w, next.get(0)));
    return one ? next.get(0) : seen;
  }

  /** Says whether the two have the same letters, two neighbours of them in other order. */
  private static boolean isSwapped(String word, String seen) {
    char[] one = word.toCharArray();
    char[] other = seen.toCharArray();
    Arrays.sort(one);
    Arrays.sort(other);
    return Arrays.equals(one, other);
  }

  private static boolean isNear(String word, String seen, int reach) {
    return Math.abs(word.length() - seen.length()) <= reach
        && NearestWord.distance(seen, word) <= reach;
  }

  /** Says whether the two are one word in singular and plural. */
  private static boolean isForm(String one, String other) {
    return one.equals(other) || one.equals(other + "s") || other.equals(one + "s");
  }

  /** Says whether the two are one word, in one language or two, or start alike. */
  private static boolean isAkin(String one, String other) {
    int stem = Math.min(STEM, Math.min(one.length(), other.length()));
    return isForm(one, other)
        || one.substring(0, stem).equals(other.substring(0, stem))
        || bare(one).equals(bare(other));
  }

  /** Returns the word as other languages spell it as well: nistagmus, visión, mouvements. */
  private static String bare(String word) {
    return word.replace('\u00e9', 'e').replace('\u00f3', 'o').replace('y', 'i').replace("ou", "o");
  }
}
