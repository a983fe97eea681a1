package org.isopter.mapper.exchange;

import static java.nio.charset.StandardCharsets.UTF_8;

import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.util.HexFormat;

/** A short name of a text that says nothing of it: the first half of its SHA-256. */
final class Digest {

  private static final int BYTES = 16;

  private Digest() {}

  static String of(String text) {
    try {
      byte[] all = MessageDigest.getInstance("SHA-256").digest(text.getBytes(UTF_8));
      return HexFormat.of().formatHex(all, 0, BYTES);
    } catch (NoSuchAlgorithmException impossible) {
      throw new IllegalStateException("every Java has SHA-256", impossible);
    }
  }
}
