package org.isopter.mapper.fuzz;

import static org.junit.jupiter.api.Assertions.assertEquals;

import org.isopter.mapper.record.RecordFormat;
import org.isopter.mapper.record.RecordReader;
import org.isopter.mapper.record.RecordWriter;
import org.isopter.model.catalogue.Catalogue;
import org.isopter.model.exam.Exam;
import org.isopter.model.value.Result;

/**
 * Any bytes as a record in JSON and in YAML: refused with a reason, or the same when read again.
 */
public final class RecordFuzz {

  private static final RecordReader READER = new RecordReader(Catalogue.standard());
  private static final RecordWriter WRITER = new RecordWriter();

  private RecordFuzz() {}

  /** Tries one input. */
  public static void fuzzerTestOneInput(byte[] input) {
    for (RecordFormat format : RecordFormat.values()) {
      Result<Exam> read = READER.read(input, format);
      Refusals.check(read.faults());
      if (read instanceof Result.Ok<Exam> ok) {
        again(ok.value());
      }
    }
  }

  private static void again(Exam exam) {
    for (RecordFormat format : RecordFormat.values()) {
      assertEquals(Result.ok(exam), READER.read(WRITER.write(exam, format), format));
    }
  }
}
