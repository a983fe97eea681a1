package org.isopter.mapper.io;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.charset.CharacterCodingException;
import java.nio.file.AccessDeniedException;
import java.nio.file.FileSystemException;
import java.nio.file.NoSuchFileException;
import java.util.Locale;

/** The words for a file or a stream that failed. */
public final class FailureText {

  private FailureText() {}

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
    if (reason instanceof CharacterCodingException) {
      return "bytes that are no UTF-8";
    }
    // The message of a failed file begins with its name, which is reported already.
    String message =
        reason instanceof FileSystemException file && file.getReason() != null
            ? file.getReason()
            : reason instanceof IOException ? reason.getMessage() : null;
    if ("Is a directory".equals(message)) {
      return "a folder and no file";
    }
    return message == null || message.isEmpty()
        ? reason.getClass().getSimpleName()
        : message.substring(0, 1).toLowerCase(Locale.ROOT) + message.substring(1);
  }
}
