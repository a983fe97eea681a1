package org.isopter.task.io;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.AccessDeniedException;
import java.nio.file.FileSystemException;
import java.nio.file.NoSuchFileException;
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

  /** Returns why a file could not be read or written, without its name. */
  public static String of(Exception reason) {
    if (reason instanceof UncheckedIOException unchecked && unchecked.getCause() != null) {
      return of(unchecked.getCause());
    }
    if (reason instanceof NoSuchFileException) {
      return "no such file or folder";
    }
    if (reason instanceof AccessDeniedException) {
      return "permission denied";
    }
    // The message of a failed file begins with its name, which is reported already.
    String message =
        reason instanceof FileSystemException file && file.getReason() != null
            ? file.getReason()
            : reason instanceof IOException ? reason.getMessage() : null;
    return message == null || message.isEmpty()
        ? reason.getClass().getSimpleName()
        : message.substring(0, 1).toLowerCase(Locale.ROOT) + message.substring(1);
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
