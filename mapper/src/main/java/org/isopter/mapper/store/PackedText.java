package org.isopter.mapper.store;

import static java.nio.charset.StandardCharsets.UTF_8;

/** A text of a packed row, in UTF-8 as it lies on disk and as the database takes it. */
final class PackedText {

  private final byte[] bytes;

  PackedText(byte[] bytes) {
    this.bytes = bytes;
  }

  /** Returns the bytes of a text, whichever form it has. */
  static byte[] bytes(Object text) {
    return text instanceof PackedText packed ? packed.bytes : text.toString().getBytes(UTF_8);
  }

  /** Returns the text. */
  @Override
  public String toString() {
    return new String(bytes, UTF_8);
  }
}
