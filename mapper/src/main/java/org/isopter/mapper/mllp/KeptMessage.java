package org.isopter.mapper.mllp;

import java.nio.file.Path;

/**
 * What became of a message.
 *
 * @param state whether it was there before
 * @param file the file of its control id
 */
record KeptMessage(State state, Path file) {

  enum State {
    NEW,
    /** The same message was kept before. */
    BEFORE,
    /** Another message of the same control id was kept before, and this one is not. */
    OTHER
  }
}
