package org.isopter.model.note;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.stream.Stream;
import org.isopter.model.note.habit.PossibleReading;
import org.junit.jupiter.api.Test;

/** Whatever is not read names a form that is: every refusal of the notes that the tests hold. */
class NearestFormTest {

  @Test
  void isAnExampleWhereItSaysSomethingElse() {
    for (String item : List.of("VA L 0.2", "Discs not examinable", "RAPD - R 3+")) {
      Unread unread = Notes.ADVISING.read(item).unread().get(0);
      assertTrue(unread.form().startsWith("example of the form"), unread::form);
    }
  }

  @Test
  void isRead() throws IOException {
    List<String> unread = new ArrayList<>();
    Map<String, Boolean> read = new HashMap<>();
    int refused = 0;
    for (String note : notes()) {
      for (Unread item : Notes.ADVISING.read(note).unread()) {
        refused++;
        forms(item)
            .filter(form -> !read.computeIfAbsent(form, NearestFormTest::isRead))
            .forEach(form -> unread.add(item.text() + " --> " + form));
      }
    }
    assertEquals("", String.join("\n", unread));
    assertTrue(refused > 400, "only " + refused);
  }

  private static Stream<String> forms(Unread item) {
    return Stream.concat(
        Stream.of(item.nearest()), item.readings().stream().map(PossibleReading::text));
  }

  private static boolean isRead(String form) {
    Note note = Notes.READER.read(form);
    return note.unread().isEmpty() && !note.facts().isEmpty();
  }

  private static List<String> notes() throws IOException {
    List<String> notes = new ArrayList<>();
    for (Path file : Notes.all()) {
      notes.add(Notes.read(file));
    }
    for (String corpus : List.of("voices", "misreadings")) {
      Path file = Path.of("src/test/resources", corpus, "notes.txt");
      Stream.of(Files.readString(file, StandardCharsets.UTF_8).strip().split("\n\n---\n\n"))
          .map(block -> block.split("\n=>\n", 2)[0])
          .forEach(notes::add);
    }
    return notes;
  }
}
