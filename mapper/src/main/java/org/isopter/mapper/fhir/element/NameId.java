package org.isopter.mapper.fhir.element;

import static java.nio.charset.StandardCharsets.ISO_8859_1;
import static java.nio.charset.StandardCharsets.UTF_8;

import java.util.Arrays;

/**
 * The UUID that follows from a name (RFC 9562, version 3, of the name's bytes alone), by MD5 as RFC
 * 1321 describes it, so that it is the same where a platform has no digests.
 */
final class NameId {

  private static final int BLOCK = 64;
  private static final int[] SHIFTS = {7, 12, 17, 22, 5, 9, 14, 20, 4, 11, 16, 23, 6, 10, 15, 21};
  private static final int[] SINES = sines();
  private static final byte[] DIGITS = "0123456789abcdef".getBytes(ISO_8859_1);

  private final int[] state = {0x67452301, 0xefcdab89, 0x98badcfe, 0x10325476};

  private NameId() {}

  /** Returns the UUID as text, in lower case. */
  static String of(String name) {
    byte[] bytes = new NameId().digest(name.getBytes(UTF_8));
    bytes[6] = (byte) ((bytes[6] & 0x0f) | 0x30);
    bytes[8] = (byte) ((bytes[8] & 0x3f) | 0x80);
    byte[] text = new byte[36];
    int at = 0;
    for (int i = 0; i < bytes.length; i++) {
      if (i == 4 || i == 6 || i == 8 || i == 10) {
        text[at++] = '-';
      }
      text[at++] = DIGITS[(bytes[i] >> 4) & 15];
      text[at++] = DIGITS[bytes[i] & 15];
    }
    return new String(text, ISO_8859_1);
  }

  private static int[] sines() {
    int[] sines = new int[BLOCK];
    for (int i = 0; i < BLOCK; i++) {
      sines[i] = (int) (long) Math.floor(Math.abs(Math.sin(i + 1)) * 4294967296.0);
    }
    return sines;
  }

  private byte[] digest(byte[] message) {
    byte[] padded = Arrays.copyOf(message, (message.length + 8) / BLOCK * BLOCK + BLOCK);
    padded[message.length] = (byte) 0x80;
    long bits = message.length * 8L;
    for (int i = 0; i < 8; i++) {
      padded[padded.length - 8 + i] = (byte) (bits >>> (8 * i));
    }
    int[] words = new int[BLOCK / 4];
    for (int at = 0; at < padded.length; at += BLOCK) {
      for (int i = 0; i < words.length; i++) {
        words[i] = word(padded, at + 4 * i);
      }
      block(words);
    }
    byte[] digest = new byte[16];
    for (int i = 0; i < digest.length; i++) {
      digest[i] = (byte) (state[i / 4] >>> (i % 4 * 8));
    }
    return digest;
  }

  private void block(int[] words) {
    int a = state[0];
    int b = state[1];
    int c = state[2];
    int d = state[3];
    for (int i = 0; i < 16; i++) {
      int sum = a + (d ^ (b & (c ^ d))) + SINES[i] + words[i];
      a = d;
      d = c;
      c = b;
      b += Integer.rotateLeft(sum, SHIFTS[i & 3]);
    }
    for (int i = 16; i < 32; i++) {
      int sum = a + (c ^ (d & (b ^ c))) + SINES[i] + words[(5 * i + 1) & 15];
      a = d;
      d = c;
      c = b;
      b += Integer.rotateLeft(sum, SHIFTS[4 + (i & 3)]);
    }
    for (int i = 32; i < 48; i++) {
      int sum = a + (b ^ c ^ d) + SINES[i] + words[(3 * i + 5) & 15];
      a = d;
      d = c;
      c = b;
      b += Integer.rotateLeft(sum, SHIFTS[8 + (i & 3)]);
    }
    for (int i = 48; i < BLOCK; i++) {
      int sum = a + (c ^ (b | ~d)) + SINES[i] + words[(7 * i) & 15];
      a = d;
      d = c;
      c = b;
      b += Integer.rotateLeft(sum, SHIFTS[12 + (i & 3)]);
    }
    state[0] += a;
    state[1] += b;
    state[2] += c;
    state[3] += d;
  }

  private static int word(byte[] bytes, int at) {
    return (bytes[at] & 255)
        | ((bytes[at + 1] & 255) << 8)
        | ((bytes[at + 2] & 255) << 16)
        | ((bytes[at + 3] & 255) << 24);
  }
}
