package org.isopter.mapper.mllp;

import java.io.IOException;
import org.isopter.mapper.v2.V2Header;

/** Where messages are kept. */
interface Inbox {

  /**
   * Keeps a message; once this returns, it is on the disk.
   *
   * @throws IOException when it cannot be kept
   */
  KeptMessage keep(V2Header header, byte[] message) throws IOException;
}
