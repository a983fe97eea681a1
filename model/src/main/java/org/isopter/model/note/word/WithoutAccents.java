package org.isopter.model.note.word;

import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import org.isopter.model.phrase.PhraseLine;

/**
 * Adds to the phrases of a line what is written of them where the keyboard has no accents:
 * reactive, pupila palida, traege. Short words stay as they are: without its accent {@code à} is
 * another word.
 */
public final class WithoutAccents {

  private static final int SHORTEST = 4;

  private static final Set<String> ACCENTED = Set.of("de", "fr", "es");

  /** Each accented letter, and what is written for it. */
  private static final String[][] PLAIN = {
    {"é", "e"}, {"è", "e"}, {"ê", "e"}, {"ë", "e"}, {"à", "a"}, {"â", "a"}, {"á", "a"},
    {"î", "i"}, {"ï", "i"}, {"í", "i"}, {"ô", "o"}, {"ó", "o"}, {"û", "u"}, {"ù", "u"},
    {"ú", "u"}, {"ç", "c"}, {"ñ", "n"}, {"œ", "oe"}, {"ä", "ae"}, {"ö", "oe"}, {"ü", "ue"},
    {"ß", "ss"}, {"É", "E"}, {"Ä", "Ae"}, {"Ö", "Oe"}, {"Ü", "Ue"}
  };

  private WithoutAccents() {}

  /** Returns the line with its phrases also as they are written without accents. */
  static PhraseLine added(PhraseLine line) {
    List<String> phrases = new ArrayList<>(line.phrases());
    phrases.addAll(of(line));
    return new PhraseLine(
        line.line(), line.kind(), line.meaning(), line.language(), phrases, line.source());
  }

  /** Returns what is written without accents of the phrases of a line. */
  public static List<String> of(PhraseLine line) {
    List<String> all = new ArrayList<>();
    for (String phrase : ACCENTED.contains(line.language()) ? line.phrases() : List.<String>of()) {
      String plain = plain(phrase);
      if (plain.length() >= SHORTEST && !line.phrases().contains(plain)) {
        all.add(plain);
      }
    }
    return all;
  }

  private static String plain(String phrase) {
    String plain = phrase;
    for (String[] letter : PLAIN) {
      plain = plain.replace(letter[0], letter[1]);
    }
    return plain;
  }
}
