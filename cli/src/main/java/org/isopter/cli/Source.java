package org.isopter.cli;

import java.io.IOException;
import java.io.InputStream;
import java.nio.file.Path;

/**
 * A file or a stream to be read.
 *
 * @param name what messages call it
 * @param form how it is written down
 * @param inside where it lies below the folder that was named; its own name otherwise
 * @param opener opens it
 */
record Source(String name, Form form, Path inside, Opener opener) {

  /** Opens a source. */
  @FunctionalInterface
  interface Opener {
    InputStream open() throws IOException;
  }

  /** Says whether it may hold more than one document. */
  boolean mayHoldSeveral() {
    return form == Form.NDJSON;
  }
}
