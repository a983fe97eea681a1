package org.isopter.mapper.record;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;

import java.security.SecureRandom;
import java.util.List;
import java.util.SplittableRandom;
import org.isopter.mapper.record.schema.RecordSchema;
import org.isopter.model.catalogue.Catalogue;
import org.isopter.model.exam.Exam;
import org.isopter.model.exam.ExamSampler;
import org.isopter.model.finding.Finding;
import org.isopter.model.finding.Layout;
import org.isopter.model.finding.Part;
import org.isopter.model.finding.Shapes;
import org.isopter.model.value.Fault;
import org.isopter.model.value.Result;
import org.junit.jupiter.api.Test;

/** A finding of the caller's own is read, written and described without a line of code more. */
class MadeUpFindingTest {

  private static final Catalogue CATALOGUE = Catalogue.standard().plus(MadeUp.GLOW);

  private final RecordReader reader = new RecordReader(CATALOGUE);
  private final RecordWriter writer = new RecordWriter();

  @Test
  void comesBackFromEitherFormatAndFitsItsSchema() {
    long seed = new SecureRandom().nextLong();
    ExamSampler exams = new ExamSampler(List.of(MadeUp.GLOW), new SplittableRandom(seed));
    RecordSchema schema = new RecordSchema(CATALOGUE);
    for (int i = 0; i < 300; i++) {
      Exam exam = exams.next();
      for (RecordFormat format : RecordFormat.values()) {
        String text = writer.write(exam, format);
        assertEquals(Result.ok(exam), reader.read(text, format), () -> seed + "\n" + text);
      }
      assertEquals(List.of(), schema.check(writer.tree(exam)), () -> "seed " + seed);
    }
  }

  @Test
  void isRefusedInItsOwnWords() {
    String yaml =
        Records.with(
            """
              made-up-glow:
                right: { value: 0.5, answer: no, twinkles: 3.5, share: 3/2 }
                left: { value: "0.5", answer: 1e3, twinkles: "12", words: 1_000, share: 7/9 % }
                both: { value: 1.5, answer: null, green: No }
            """);
    assertEquals(
        List.of(
            "right.twinkles: saw 3.5, wanted a whole number from -3 to 300",
            "right.share: saw \"3/2\", wanted a fraction of 0 to 10 % over 0 to 10 %, the first"
                + " not above the second; its unit is %",
            "left.value: saw \"0.5\", wanted 0 to 1 or -5 to 40 dB; write it without quotes: 0.5",
            "left.answer: saw 1e3, wanted one of no, yes, on, null, true, 1e3, a: b; put it in"
                + " quotes: \"1e3\"",
            "left.twinkles: saw \"12\", wanted a whole number from -3 to 300; write it without"
                + " quotes",
            "left.words: saw 1_000, wanted text of at most 40 characters, not blank; put it in"
                + " quotes, so that it stays as written: \"1_000\"",
            "both.value: saw 1.5, wanted 0 to 1",
            "both.answer: saw nothing, wanted one of no, yes, on, null, true, 1e3, a: b; leave the"
                + " key out when there is nothing to say",
            "both.green: saw \"No\", wanted true or false; write false"),
        reader.read(yaml, RecordFormat.YAML).faults().stream()
            .map(Fault::toString)
            .map(reported -> reported.substring(reported.indexOf("glow.") + 5))
            .toList());
  }

  @Test
  void mayNotUseAKeyThatEveryEntryHas() {
    Part<String, String> device =
        Part.optional("device", "Device", Shapes.text(5), java.util.Optional::of);
    Finding<String> clash =
        Finding.of("clash", "Clash")
            .value(Layout.<String>ofParts(List.of(device), values -> values.get(device)))
            .build();
    Catalogue catalogue = Catalogue.of(List.of(clash));
    assertThrows(IllegalArgumentException.class, () -> new RecordReader(catalogue));
  }
}
