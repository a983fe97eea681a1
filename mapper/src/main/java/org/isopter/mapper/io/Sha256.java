package org.isopter.mapper.io;

import static java.nio.charset.StandardCharsets.UTF_8;

import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.util.HexFormat;

/** The SHA-256 of something (FIPS 180-4). */
public final class Sha256 {

  private Sha256() {}

  /**
   * Returns the 32 bytes.
   *
   * @throws IllegalStateException never: every Java has SHA-256
   */
  public static byte[] of(byte[] bytes) {
    try {
      return MessageDigest.getInstance("SHA-256").digest(bytes);
    } catch (NoSuchAlgorithmException impossible) {
      throw new IllegalStateException("every Java has SHA-256", impossible);
    }
  }

  /** Returns the 64 digits to the base of 16, letters small. */
  public static String hex(byte[] bytes) {
    return HexFormat.of().formatHex(of(bytes));
  }

  /** Returns the 64 digits of a text in UTF-8. */
  public static String hex(String text) {
    return hex(text.getBytes(UTF_8));
  }
}
