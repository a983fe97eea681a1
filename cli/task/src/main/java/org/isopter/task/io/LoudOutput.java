package org.isopter.task.io;

import java.io.FilterOutputStream;
import java.io.IOException;
import java.io.OutputStream;
import org.isopter.mapper.io.UnwritableException;

/**
 * An output whose failures nobody can overlook: a print stream keeps an {@link IOException} to
 * itself, so that a full disk would leave half the lines and the exit status of success.
 */
public final class LoudOutput extends FilterOutputStream {

  private final String name;

  /**
   * Makes an output.
   *
   * @param name what a message calls it
   */
  public LoudOutput(OutputStream out, String name) {
    super(out);
    this.name = name;
  }

  @Override
  public void write(int single) {
    write(new byte[] {(byte) single}, 0, 1);
  }

  /**
   * Writes bytes.
   *
   * @throws UnwritableException when they cannot be written
   */
  @Override
  public void write(byte[] bytes, int from, int length) {
    try {
      out.write(bytes, from, length);
    } catch (IOException failed) {
      throw new UnwritableException(name, failed);
    }
  }
}
