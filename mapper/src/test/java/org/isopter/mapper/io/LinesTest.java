package org.isopter.mapper.io;

import static java.nio.charset.StandardCharsets.UTF_8;
import static org.junit.jupiter.api.Assertions.assertEquals;

import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.io.InputStream;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** Lines of bytes, read in pieces of any size. */
class LinesTest {

  @ParameterizedTest
  @ValueSource(ints = {1, 2, 3, 7, 100_000})
  void linesComeWholeHoweverTheBytesArrive(int piece) throws IOException {
    String text = "é\n\nlonger line\r\n" + "x".repeat(70_000) + "\nlast";
    assertEquals(
        text.lines().toList(), lines(text, piece, 1 << 20).stream().map(String::strip).toList());
  }

  @Test
  void aLineFeedAtTheEndStartsNoFurtherLine() throws IOException {
    assertEquals(List.of("a", ""), lines("a\n\n", 4, 10));
    assertEquals(List.of(), lines("", 4, 10));
  }

  @Test
  void aLineThatIsTooLongIsCutAndNotHeld() throws IOException {
    assertEquals(List.of("xxxxx", "y"), lines("x".repeat(100) + "\ny\n", 8, 5));
  }

  private static List<String> lines(String text, int piece, int longest) throws IOException {
    InputStream slow =
        new ByteArrayInputStream(text.getBytes(UTF_8)) {
          @Override
          public synchronized int read(byte[] into, int from, int length) {
            return super.read(into, from, Math.min(piece, length));
          }
        };
    Lines reader = new Lines(slow, longest);
    List<String> lines = new ArrayList<>();
    Optional<Lines.Line> line = reader.next();
    while (line.isPresent()) {
      lines.add(new String(line.get().bytes(), UTF_8));
      line = reader.next();
    }
    return lines;
  }
}
