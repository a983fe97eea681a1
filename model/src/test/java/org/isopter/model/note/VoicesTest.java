package org.isopter.model.note;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.isopter.model.text.RecordText;
import org.junit.jupiter.api.DynamicTest;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.TestFactory;

/**
 * Notes in the voices of many departments and countries, all invented, and what is taken of each;
 * {@code -Dgolden=update} rewrites that. What the notes mean is common practice, no source.
 */
class VoicesTest {

  private static final Path NOTES = Path.of("src/test/resources/voices/notes.txt");
  private static final boolean UPDATE = "update".equals(System.getProperty("golden"));

  @TestFactory
  Stream<DynamicTest> giveTheExpectedFacts() throws IOException {
    if (UPDATE) {
      List<String> again = new ArrayList<>();
      blocks().forEach(block -> again.add(note(block) + "\n=>\n" + read(note(block))));
      Files.writeString(NOTES, String.join("\n\n---\n\n", again) + "\n", StandardCharsets.UTF_8);
    }
    return blocks().stream().map(block -> DynamicTest.dynamicTest(block, () -> check(block)));
  }

  @Test
  void areMany() throws IOException {
    assertTrue(blocks().size() > 115, "only " + blocks().size());
  }

  private static void check(String block) {
    assertEquals(block.split("\n=>\n", 2)[1].strip(), read(note(block)).strip());
  }

  private static String note(String block) {
    return block.split("\n=>\n", 2)[0];
  }

  private static List<String> blocks() throws IOException {
    return List.of(Files.readString(NOTES, StandardCharsets.UTF_8).strip().split("\n\n---\n\n"));
  }

  private static String read(String text) {
    Note note = Notes.READER.read(text);
    return Stream.concat(
            note.facts().stream().map(RecordText::of),
            note.unread().stream().map(unread -> "? " + unread.text().replace("\n", " ")))
        .collect(Collectors.joining("\n"));
  }
}
