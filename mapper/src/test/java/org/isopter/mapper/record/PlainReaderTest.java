package org.isopter.mapper.record;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.Random;
import org.isopter.model.catalogue.Catalogue;
import org.isopter.model.exam.Exam;
import org.isopter.model.exam.ExamSampler;
import org.isopter.model.value.Result;
import org.junit.jupiter.api.Test;

final class PlainReaderTest {

  private static final String MARKS = "{}[]\",:\\0129.-+eEtfn ulx\n\u00e9";

  private final RecordReader reader = new RecordReader(Catalogue.standard());
  private final Random random = new Random(693147);

  @Test
  void readsWhatWasWritten() {
    ExamSampler exams = new ExamSampler(Catalogue.standard().all(), random);
    for (int i = 0; i < 200; i++) {
      Exam exam = exams.next();
      String text = new RecordWriter().write(exam, RecordFormat.JSON);
      assertEquals(exam, reader.readPlain(text).orThrow());
    }
  }

  @Test
  void takesAndRefusesWhatTheOtherReaderDoes() {
    ExamSampler exams = new ExamSampler(Catalogue.standard().all(), random);
    int refused = 0;
    for (int i = 0; i < 40; i++) {
      String text = new RecordWriter().write(exams.next(), RecordFormat.JSON);
      for (int j = 0; j < 25; j++) {
        String changed = changed(text);
        Result<Exam> one = reader.read(changed, RecordFormat.JSON);
        Result<Exam> other = reader.readPlain(changed);
        assertEquals(one.isOk(), other.isOk(), () -> one + "\n" + other + "\n" + changed);
        if (one.isOk()) {
          assertEquals(one.orThrow(), other.orThrow());
        } else {
          refused++;
        }
      }
    }
    assertTrue(refused > 200, "only " + refused);
  }

  private String changed(String text) {
    int at = random.nextInt(text.length());
    char mark = MARKS.charAt(random.nextInt(MARKS.length()));
    return text.substring(0, at) + mark + text.substring(at + random.nextInt(2));
  }

  @Test
  void refusesWhatIsNoJson() {
    for (String text :
        List.of(
            "",
            " ",
            "{",
            "[1,]",
            "{\"a\":1,}",
            "{,}",
            "016",
            "1.",
            "-",
            "1e",
            "tru",
            "\"a",
            "\"\\x\"",
            "\"\\u12g4\"",
            "\"\u0001\"",
            "{} {}",
            "[1 2]",
            "{\"a\" 1}",
            "'a'")) {
      assertFalse(reader.readPlain(text).isOk(), text);
    }
  }

  @Test
  void refusesWhatNestsWithoutEnd() {
    assertFalse(reader.readPlain("[".repeat(100_000)).isOk());
  }

  @Test
  void saysWhereAFaultStands() {
    String text =
        new RecordWriter()
            .write(new ExamSampler(Catalogue.standard().all(), random).next(), RecordFormat.JSON)
            .replace("\"final\"", "\"finel\"");
    String colon = text.replaceFirst(":", ";");
    assertEquals(
        reader.read(text, RecordFormat.JSON).faults().toString(),
        reader.readPlain(text).faults().toString());
    assertTrue(
        reader.readPlain(colon).faults().get(0).toString().contains("line 2, column 12"),
        reader.readPlain(colon).faults().toString());
  }
}
