package org.isopter.server;

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

/** The examinations of the demo. */
final class DemoRecords {

  private DemoRecords() {}

  static List<Exam> all() {
    return ending(".yaml");
  }

  static List<Exam> ofEveryForm() {
    return ending("");
  }

  private static List<Exam> ending(String ending) {
    try (Stream<Path> files = Files.list(Path.of("../../docs/demo"))) {
      return files
          .filter(file -> file.toString().endsWith(ending) && !file.toString().endsWith(".md"))
          .sorted()
          .map(DemoRecords::read)
          .toList();
    } catch (IOException broken) {
      throw new UncheckedIOException(broken);
    }
  }

  private static Exam read(Path file) {
    RecordFormat format = file.toString().endsWith(".yaml") ? RecordFormat.YAML : RecordFormat.JSON;
    return new RecordReader(Catalogue.standard()).read(text(file), format).orThrow();
  }

  private static String text(Path file) {
    try {
      return Files.readString(file);
    } catch (IOException broken) {
      throw new UncheckedIOException(broken);
    }
  }
}
