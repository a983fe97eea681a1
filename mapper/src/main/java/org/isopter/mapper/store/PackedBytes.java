package org.isopter.mapper.store;

import java.util.Arrays;

/** Bytes in the making, without the locks that the library's streams have. */
final class PackedBytes {

  private byte[] bytes = new byte[1_024];
  private int length;

  /** Adds a number of at least 0, seven bits in a byte, the lowest first. */
  void number(int number) {
    room(5);
    int rest = number;
    while (rest >= 0x80) {
      bytes[length++] = (byte) ((rest & 0x7f) | 0x80);
      rest >>>= 7;
    }
    bytes[length++] = (byte) rest;
  }

  /** Adds eight bytes, the highest first. */
  void put(long eight) {
    room(Long.BYTES);
    for (int shift = Long.SIZE - Byte.SIZE; shift >= 0; shift -= Byte.SIZE) {
      bytes[length++] = (byte) (eight >>> shift);
    }
  }

  void put(byte[] some) {
    put(some, some.length);
  }

  void put(PackedBytes other) {
    put(other.bytes, other.length);
  }

  private void put(byte[] some, int count) {
    room(count);
    System.arraycopy(some, 0, bytes, length, count);
    length += count;
  }

  private void room(int wanted) {
    if (bytes.length - length < wanted) {
      bytes = Arrays.copyOf(bytes, Math.max(2 * bytes.length, length + wanted));
    }
  }

  byte[] all() {
    return Arrays.copyOf(bytes, length);
  }
}
