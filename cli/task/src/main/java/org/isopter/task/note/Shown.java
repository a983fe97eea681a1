package org.isopter.task.note;

import java.util.Locale;

/** A message about a note as a terminal can show it. */
final class Shown {

  /** A longer message is no line that anybody reads. */
  private static final int LONGEST = 1000;

  private static final int PART = 400;

  private Shown() {}

  /** Returns a message with the characters that no terminal shows named, and not too long. */
  static String of(String message) {
    StringBuilder shown = new StringBuilder();
    brief(message)
        .codePoints()
        .forEach(
            point -> {
              if (Character.getType(point) == Character.FORMAT) {
                shown.append(String.format(Locale.ROOT, "<U+%04X>", point));
              } else {
                shown.appendCodePoint(point);
              }
            });
    return shown.toString();
  }

  private static String brief(String message) {
    return message.length() <= LONGEST
        ? message
        : message.substring(0, PART) + " ... " + message.substring(message.length() - PART);
  }
}
