package org.isopter.mapper.json.token;

import java.lang.invoke.MethodHandles;
import java.lang.invoke.VarHandle;
import java.nio.ByteOrder;

/** Looks at eight bytes of a text at once. */
final class EightBytes {

  private static final VarHandle LONGS =
      MethodHandles.byteArrayViewVarHandle(long[].class, ByteOrder.LITTLE_ENDIAN);
  private static final long ONES = 0x0101010101010101L;
  private static final long HIGH = 0x8080808080808080L;

  private EightBytes() {}

  /** Returns the first of at most eight bytes as a number, filled up with zeros. */
  static long start(byte[] bytes, int from, int to) {
    int length = to - from;
    if (from + Long.BYTES <= bytes.length) {
      long word = (long) LONGS.get(bytes, from);
      return length >= Long.BYTES ? word : word & ((1L << (8 * length)) - 1);
    }
    long word = 0;
    for (int i = 0; i < Math.min(length, Long.BYTES); i++) {
      word |= (bytes[from + i] & 0xFFL) << (8 * i);
    }
    return word;
  }

  /**
   * Returns where the first byte stands that is a quotation mark, a backslash, a control character
   * or no ASCII; the length of the bytes where none does.
   */
  static int plain(byte[] bytes, int from) {
    int at = from;
    while (at + Long.BYTES <= bytes.length) {
      long other = others((long) LONGS.get(bytes, at));
      if (other != 0) {
        return at + (Long.numberOfTrailingZeros(other) >>> 3);
      }
      at += Long.BYTES;
    }
    while (at < bytes.length && isPlain(bytes[at])) {
      at++;
    }
    return at;
  }

  /** Marks the bytes that are not plain; beyond the first mark there may be false ones. */
  private static long others(long word) {
    long quote = word ^ ('"' * ONES);
    long slash = word ^ ('\\' * ONES);
    return (((quote - ONES) & ~quote)
            | ((slash - ONES) & ~slash)
            | ((word - 0x20 * ONES) & ~word)
            | word)
        & HIGH;
  }

  private static boolean isPlain(byte value) {
    return value >= 0x20 && value != '"' && value != '\\';
  }
}
