package org.isopter.model.note;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.OffsetDateTime;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.isopter.model.text.RecordText;
import org.junit.jupiter.api.DynamicTest;
import org.junit.jupiter.api.TestFactory;

/**
 * Notes that are easily read as something else, each beside its opposite: what a careful reader
 * takes, and what such a reader asks about.
 *
 * <p>The notes are invented; what they mean is common practice, no source.
 */
class MisreadingsTest {

  private static final Path NOTES = Path.of("src/test/resources/misreadings");

  private static final NoteReader READER =
      NoteReader.performed(OffsetDateTime.parse("2026-03-02T14:10:00+01:00"));

  @TestFactory
  Stream<DynamicTest> takesWhatIsClearAndAsksAboutTheRest() throws IOException {
    List<String> blocks = new ArrayList<>();
    try (Stream<Path> files = Files.list(NOTES)) {
      for (Path file : files.sorted().toList()) {
        String text = Files.readString(file, StandardCharsets.UTF_8);
        blocks.addAll(List.of(text.strip().split("\n\n---\n\n")));
      }
    }
    assertEquals(true, blocks.size() > 40, "so few: " + blocks.size());
    return blocks.stream().map(block -> DynamicTest.dynamicTest(block, () -> check(block)));
  }

  private static void check(String block) {
    String[] parts = block.split("\n=>\n", 2);
    assertEquals(parts[1].strip(), read(parts[0]).strip());
  }

  private static String read(String text) {
    Note note = READER.read(text);
    return Stream.concat(
            note.facts().stream().map(RecordText::of),
            note.unread().stream().map(unread -> "? " + unread.text().replace("\n", " ")))
        .collect(Collectors.joining("\n"));
  }
}
