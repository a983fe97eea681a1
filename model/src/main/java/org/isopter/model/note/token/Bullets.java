package org.isopter.model.note.token;

import java.util.HashSet;
import java.util.Set;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * The marks that start the lines of a list. A dash before a single line may be one, or may mean
 * "no": then it is neither.
 *
 * @param bullets the places of marks that only start a line of a list
 * @param unclear the places of dashes that may mean something
 */
public record Bullets(Set<Integer> bullets, Set<Integer> unclear) {

  /** What stands for a dash that may mean "no"; no grammar reads it. */
  static final String UNCLEAR = "\u2014";

  private static final Pattern LINE_START =
      Pattern.compile("(?m)^[ \\t]*([-\u2212\u2013*\u2022\u00B7])(?=[ \\t]+\\S)");

  static Bullets in(String note) {
    Set<Integer> marks = new HashSet<>(ListNumbers.marks(note));
    Set<Integer> dashes = new HashSet<>();
    Matcher lines = LINE_START.matcher(note);
    while (lines.find()) {
      boolean dash = "-\u2212\u2013".contains(lines.group(1));
      (dash ? dashes : marks).add(lines.start(1));
    }
    if (dashes.size() == 1) {
      return new Bullets(marks, dashes);
    }
    marks.addAll(dashes);
    return new Bullets(marks, Set.of());
  }

  /** Says whether a word stands for a dash before a single line. */
  public static boolean isUnclear(Token token) {
    return token.is(UNCLEAR);
  }

  boolean isOne(int place) {
    return bullets.contains(place);
  }

  boolean isUnclear(int place) {
    return unclear.contains(place);
  }
}
