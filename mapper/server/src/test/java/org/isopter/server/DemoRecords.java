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
    RecordReader reader = new RecordReader(Catalogue.standard());
    try (Stream<Path> files = Files.list(Path.of("../../docs/demo"))) {
      return files
          .filter(file -> file.toString().endsWith(".yaml"))
          .sorted()
          .map(file -> reader.read(text(file), RecordFormat.YAML).orThrow())
          .toList();
    } catch (IOException broken) {
      throw new UncheckedIOException(broken);
    }
  }

  private static String text(Path file) {
    try {
      return Files.readString(file);
    } catch (IOException broken) {
      throw new UncheckedIOException(broken);
    }
  }
}
