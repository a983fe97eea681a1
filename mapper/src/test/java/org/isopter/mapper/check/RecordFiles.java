package org.isopter.mapper.check;

import static java.nio.charset.StandardCharsets.UTF_8;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.stream.Stream;
import org.isopter.mapper.record.RecordFormat;
import org.isopter.mapper.record.RecordReader;
import org.isopter.model.catalogue.Catalogue;
import org.isopter.model.exam.Exam;
import org.isopter.model.value.Result;

/** Records in files. */
public final class RecordFiles {

  public static final Path DEMO = Path.of("../docs/demo");

  private static final RecordReader READER = new RecordReader(Catalogue.standard());

  private RecordFiles() {}

  static String text(Path file) {
    try {
      return Files.readString(file, UTF_8);
    } catch (IOException failed) {
      throw new UncheckedIOException(failed);
    }
  }

  /** Returns the record in a file. */
  public static Exam exam(Path file) {
    RecordFormat format = RecordFormat.ofFileName(file.toString()).orElseThrow();
    Result<Exam> exam = READER.read(text(file), format);
    assertTrue(exam.isOk(), () -> file + ": " + exam.faults());
    return exam.orThrow();
  }

  /** Returns the records of a folder, by name. */
  public static List<Path> in(Path folder) {
    try (Stream<Path> files = Files.list(folder)) {
      return files
          .filter(file -> RecordFormat.ofFileName(file.toString()).isPresent())
          .sorted()
          .toList();
    } catch (IOException failed) {
      throw new UncheckedIOException(failed);
    }
  }
}
