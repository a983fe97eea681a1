package org.isopter.model.note;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.stream.Stream;
import org.junit.jupiter.api.DynamicTest;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.TestFactory;

/** Every golden note gives its expected facts; {@code -Dgolden=update} rewrites them. */
class GoldenNotesTest {

  private static final boolean UPDATE = "update".equals(System.getProperty("golden"));

  @TestFactory
  Stream<DynamicTest> givesTheExpectedFacts() throws IOException {
    return Notes.all().stream()
        .map(file -> DynamicTest.dynamicTest(file.getFileName().toString(), () -> check(file)));
  }

  @Test
  void areForty() throws IOException {
    assertEquals(40, Notes.all().size());
  }

  private static void check(Path file) throws IOException {
    String lines = String.join("\n", FactLines.of(Notes.ADVISING.read(Notes.read(file)))) + "\n";
    Path expected = file.resolveSibling(file.getFileName().toString().replace(".txt", ".facts"));
    if (UPDATE) {
      Files.writeString(expected, lines, StandardCharsets.UTF_8);
    }
    assertEquals(Notes.read(expected), lines);
  }
}
