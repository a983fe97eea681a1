package org.isopter.model.note;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.OffsetDateTime;
import java.util.List;
import java.util.stream.Stream;

/** The golden notes: shorthand as different clinicians may write it, all of it invented. */
final class Notes {

  /** Names a form near to each item that is not read, which takes several times as long. */
  static final NoteReader ADVISING =
      NoteReader.performed(OffsetDateTime.parse("2026-03-02T09:30:00+01:00"));

  static final NoteReader READER = ADVISING.withoutAdvice();

  private static final Path FOLDER = Path.of("src", "test", "resources", "notes");

  private Notes() {}

  static List<Path> all() throws IOException {
    try (Stream<Path> files = Files.list(FOLDER)) {
      return files.filter(file -> file.toString().endsWith(".txt")).sorted().toList();
    }
  }

  static String read(Path file) throws IOException {
    return Files.readString(file, StandardCharsets.UTF_8);
  }
}
