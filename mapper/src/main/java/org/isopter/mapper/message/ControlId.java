package org.isopter.mapper.message;

import org.isopter.mapper.io.Sha256;

/** What a message is known by (MSH-10): a digest of what it says. */
final class ControlId {

  /** MSH-10 holds twenty letters. */
  private static final int LENGTH = 20;

  private ControlId() {}

  static String of(String message) {
    return Sha256.hex(message).substring(0, LENGTH);
  }
}
