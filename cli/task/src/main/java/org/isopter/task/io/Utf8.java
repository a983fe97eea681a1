package org.isopter.task.io;

import static java.nio.charset.StandardCharsets.UTF_8;

import java.io.IOException;
import java.io.OutputStream;
import org.isopter.mapper.io.UnwritableException;

/** Writes text in UTF-8 and never keeps quiet about what could not be written. */
public final class Utf8 {

  private Utf8() {}

  /**
   * Writes a text.
   *
   * @param stream where to
   * @param name what a message calls it
   * @throws UnwritableException when it cannot be written
   */
  public static void write(OutputStream stream, String name, String text) {
    try {
      stream.write(text.getBytes(UTF_8));
    } catch (IOException failed) {
      throw new UnwritableException(name, failed);
    }
  }
}
