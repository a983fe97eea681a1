package org.isopter.task.io;

import java.util.Locale;
import java.util.regex.Pattern;

/** Small pieces of messages. */
public final class Messages {

  private static final Pattern HIDDEN =
      Pattern.compile("[\\p{Cc}\\u202A-\\u202E\\u2066-\\u2069&&[^\\n\\t]]");

  private Messages() {}

  /** Returns a number with its noun: {@code 1 record}, {@code 2 records}. */
  public static String count(long number, String noun) {
    return number + " " + noun + (number == 1 ? "" : "s");
  }

  /**
   * Returns a text whose control characters are shown and not obeyed: what others wrote may not
   * move the cursor, hide a line or turn the direction of writing.
   */
  public static String visible(String text) {
    return HIDDEN
        .matcher(text)
        .replaceAll(found -> String.format(Locale.ROOT, "<U+%04X>", (int) found.group().charAt(0)));
  }

  /** Returns one line about a mistake in the program. */
  public static String internal(Throwable mistake) {
    return "internal error ("
        + mistake.getClass().getSimpleName()
        + "); run it again with --debug to see where";
  }
}
