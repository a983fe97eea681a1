package org.isopter.mapper.message;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.Stream;
import org.isopter.mapper.record.RecordFormat;
import org.isopter.mapper.record.RecordReader;
import org.isopter.model.catalogue.Catalogue;
import org.isopter.model.exam.Exam;

/** The records of the demo, in the order of their names. */
final class DemoRecords {

  private DemoRecords() {}

  static List<Exam> all() throws IOException {
    RecordReader reader = new RecordReader(Catalogue.standard());
    List<Exam> exams = new ArrayList<>();
    try (Stream<Path> files = Files.list(Path.of("../docs/demo"))) {
      for (Path file : files.filter(one -> !one.toString().endsWith(".md")).sorted().toList()) {
        boolean yaml = file.toString().endsWith("yaml");
        RecordFormat format = yaml ? RecordFormat.YAML : RecordFormat.JSON;
        exams.add(reader.read(Files.readString(file), format).orThrow());
      }
    }
    return exams;
  }
}
