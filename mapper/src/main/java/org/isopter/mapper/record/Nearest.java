package org.isopter.mapper.record;

import java.util.Collection;
import java.util.Locale;
import java.util.Optional;

/** Finds the word that was probably meant; it is only ever suggested, never taken. */
final class Nearest {

  private Nearest() {}

  /** Returns advice that names the nearest word, or no advice when none is near. */
  static String advice(String seen, Collection<String> words) {
    return of(seen, words).map(word -> "did you mean \"" + word + "\"?").orElse("");
  }

  /** Returns the word with the fewest slips between it and what was seen, if they are few. */
  public static Optional<String> of(String seen, Collection<String> words) {
    String plain = plain(seen);
    int fewest = 1 + Math.min(plain.length(), 12) / 4;
    Optional<String> nearest = Optional.empty();
    for (String word : words) {
      int slips = slips(plain, plain(word), fewest);
      if (slips < fewest || (slips == fewest && nearest.isEmpty())) {
        fewest = slips;
        nearest = Optional.of(word);
      }
    }
    return nearest;
  }

  private static String plain(String word) {
    return word.toLowerCase(Locale.ROOT).replace('_', '-').replace(' ', '-');
  }

  /** Counts letters to add, drop or replace (Levenshtein's distance), or says one too many. */
  private static int slips(String from, String to, int most) {
    if (Math.abs(from.length() - to.length()) > most) {
      return most + 1;
    }
    int[] row = new int[to.length() + 1];
    for (int j = 0; j < row.length; j++) {
      row[j] = j;
    }
    for (int i = 1; i <= from.length(); i++) {
      next(row, i, from.charAt(i - 1), to);
    }
    return row[to.length()];
  }

  private static void next(int[] row, int i, char letter, String to) {
    int diagonal = row[0];
    row[0] = i;
    for (int j = 1; j < row.length; j++) {
      int replaced = diagonal + (to.charAt(j - 1) == letter ? 0 : 1);
      diagonal = row[j];
      row[j] = Math.min(replaced, 1 + Math.min(row[j], row[j - 1]));
    }
  }
}
