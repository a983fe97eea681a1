package org.isopter.task.io;

import java.io.IOException;
import java.util.Optional;

/** A talk with whoever sits at the keyboard: plain lines one way, typed lines the other. */
public interface Dialogue extends AutoCloseable {

  /** Shows a line. */
  void say(String line);

  /**
   * Asks for a line.
   *
   * @param label what stands before the place where it is typed
   * @return the line; empty when no more will be typed
   * @throws IOException when it cannot be read
   */
  Optional<String> ask(String label) throws IOException;

  @Override
  void close() throws IOException;
}
