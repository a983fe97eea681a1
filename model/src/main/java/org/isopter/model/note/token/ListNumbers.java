package org.isopter.model.note.token;

import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Collectors;

/**
 * The numbers of a list, each below the other or all on one line: {@code 1. VA R 6/6 2. PERLA}.
 *
 * <p>A list starts a line with 1 and counts up by one; of one number alone, it starts the note.
 * Behind a side, or a word that waits for a number, it may be a value and ends the list.
 */
final class ListNumbers {

  private static final Pattern NUMBER =
      Pattern.compile("(?m)(^|[ \\t])[ \\t]*(\\d{1,2})([.)])(?=[ \\t]+\\S)");

  private static final Pattern WAITS =
      Pattern.compile(
          "(?i).*(?:\\b(?:[a-z]{1,3}|grade|left|right|both|eye|eyes|type|frisen|stage|near)|[-+/@=<>:(])\\s*",
          Pattern.DOTALL);

  private ListNumbers() {}

  /** Returns where the numbers of the list stand in the note; none where there is no list. */
  static Set<Integer> in(String note) {
    return found(note).stream().map(place -> place[0]).collect(Collectors.toSet());
  }

  /** Returns where the brackets behind them stand: 1) VA. */
  static Set<Integer> marks(String note) {
    return found(note).stream()
        .map(place -> place[1])
        .filter(place -> note.charAt(place) == ')')
        .collect(Collectors.toSet());
  }

  private static List<int[]> found(String note) {
    List<int[]> places = new ArrayList<>();
    Matcher next = NUMBER.matcher(note);
    while (next.find()) {
      boolean line = isLineStart(note, next.start(2));
      boolean counts = Integer.parseInt(next.group(2)) == places.size() + 1;
      boolean free = line || (!places.isEmpty() && !waits(note, next.start(2)));
      if (counts && free) {
        places.add(new int[] {next.start(2), next.start(3)});
      }
    }
    return places.size() > 1 || isAlone(note, places) ? places : List.of();
  }

  /** Says whether a note starts with the only number of a list: 1) VA R 6/6. */
  private static boolean isAlone(String note, List<int[]> places) {
    return places.size() == 1 && note.substring(0, places.get(0)[0]).isBlank();
  }

  private static boolean isLineStart(String note, int at) {
    return note.substring(note.lastIndexOf('\n', at - 1) + 1, at).isBlank();
  }

  /** Says whether what stands before the number may wait for it: L 2. */
  private static boolean waits(String note, int at) {
    String line = note.substring(note.lastIndexOf('\n', at - 1) + 1, at);
    return WAITS.matcher(line).matches();
  }
}
