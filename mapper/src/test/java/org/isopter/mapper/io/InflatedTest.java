package org.isopter.mapper.io;

import static java.nio.charset.StandardCharsets.UTF_8;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.ByteArrayInputStream;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.InputStream;
import java.io.OutputStream;
import java.util.Arrays;
import java.util.zip.GZIPOutputStream;
import org.junit.jupiter.api.Test;

/** Gzip streams end, whatever is in them. */
class InflatedTest {

  private static final int PIECE = 1 << 20;

  @Test
  void givesTheBytesBack() throws IOException {
    byte[] compressed = compressed("a\n\n  b\n", 0);
    try (InputStream in = Inflated.of(new ByteArrayInputStream(compressed))) {
      assertEquals("a\n\n  b\n", new String(in.readAllBytes(), UTF_8));
    }
  }

  @Test
  void stopsWhereNothingButBlankLinesFollow() throws IOException {
    byte[] compressed = compressed("a", 100);
    assertTrue(compressed.length < PIECE);
    try (InputStream in = Inflated.of(new ByteArrayInputStream(compressed))) {
      IOException stopped =
          assertThrows(IOException.class, () -> in.transferTo(OutputStream.nullOutputStream()));
      assertEquals("more than 1 MB of blank lines in a row", stopped.getMessage());
    }
  }

  private static byte[] compressed(String text, int blankPieces) throws IOException {
    byte[] blank = new byte[PIECE];
    Arrays.fill(blank, (byte) '\n');
    ByteArrayOutputStream bytes = new ByteArrayOutputStream();
    try (GZIPOutputStream out = new GZIPOutputStream(bytes)) {
      out.write(text.getBytes(UTF_8));
      for (int i = 0; i < blankPieces; i++) {
        out.write(blank);
      }
    }
    return bytes.toByteArray();
  }
}
