package org.isopter.mapper.record;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.security.SecureRandom;
import java.util.List;
import java.util.SplittableRandom;
import org.isopter.mapper.record.schema.RecordSchema;
import org.isopter.model.catalogue.Catalogue;
import org.isopter.model.exam.Exam;
import org.isopter.model.exam.ExamSampler;
import org.isopter.model.value.Result;
import org.junit.jupiter.api.Test;

/** What goes into a record comes out of it, for any examination of the catalogue. */
class RecordLawsTest {

  private static final Catalogue CATALOGUE = Catalogue.standard();

  private final long seed = new SecureRandom().nextLong();
  private final ExamSampler exams = new ExamSampler(CATALOGUE.all(), new SplittableRandom(seed));
  private final RecordReader reader = new RecordReader(CATALOGUE);
  private final RecordWriter writer = new RecordWriter();

  @Test
  void anExamComesBackFromEitherFormat() {
    for (int i = 0; i < 2_000; i++) {
      Exam exam = exams.next();
      for (RecordFormat format : RecordFormat.values()) {
        String text = writer.write(exam, format);
        assertEquals(
            Result.ok(exam), reader.read(text, format), () -> "seed " + seed + "\n" + text);
      }
    }
  }

  @Test
  void writingWhatWasReadChangesNothing() {
    for (int i = 0; i < 200; i++) {
      String json = writer.write(exams.next(), RecordFormat.JSON);
      Exam read = reader.read(json, RecordFormat.JSON).orThrow();
      assertEquals(json, writer.write(read, RecordFormat.JSON), () -> "seed " + seed);
      String yaml = writer.write(read, RecordFormat.YAML);
      Exam again = reader.read(yaml, RecordFormat.YAML).orThrow();
      assertEquals(yaml, writer.write(again, RecordFormat.YAML), () -> "seed " + seed);
    }
  }

  @Test
  void theLineIsTheSameRecord() {
    Exam exam = exams.next();
    String line = writer.line(exam);
    assertEquals(Result.ok(exam), reader.read(line, RecordFormat.JSON), () -> "seed " + seed);
    assertTrue(line.indexOf('\n') < 0, () -> "seed " + seed);
  }

  @Test
  void whatIsWrittenFitsTheSchema() {
    RecordSchema schema = new RecordSchema(CATALOGUE);
    for (int i = 0; i < 2_000; i++) {
      Exam exam = exams.next();
      assertEquals(
          List.of(),
          schema.check(writer.tree(exam)),
          () -> "seed " + seed + "\n" + writer.write(exam, RecordFormat.YAML));
    }
  }
}
