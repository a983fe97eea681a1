package org.isopter.mapper.exchange;

import org.isopter.mapper.io.Sha256;

/** A short name of a text that says nothing of it: the first half of its SHA-256. */
final class Digest {

  private static final int DIGITS = 32;

  private Digest() {}

  static String of(String text) {
    return Sha256.hex(text).substring(0, DIGITS);
  }
}
