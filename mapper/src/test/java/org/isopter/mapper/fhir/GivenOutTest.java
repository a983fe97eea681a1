package org.isopter.mapper.fhir;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.time.OffsetDateTime;
import java.util.Optional;
import org.isopter.mapper.foreign.ForeignReader;
import org.isopter.mapper.foreign.ForeignWriter;
import org.isopter.mapper.foreign.reading.Options;
import org.isopter.mapper.foreign.reading.ReadExam;
import org.isopter.mapper.foreign.reading.Reading;
import org.isopter.model.catalogue.Catalogue;
import org.isopter.model.exam.Exam;
import org.isopter.model.exam.Header;
import org.isopter.model.exam.Identifier;
import org.isopter.model.exam.Party;
import org.isopter.model.letter.Summary;
import org.isopter.model.note.NoteReader;
import org.junit.jupiter.api.Test;

/** When a report was given out and what it concludes, which are said where they are asked for. */
final class GivenOutTest {

  private static final OffsetDateTime ISSUED = OffsetDateTime.parse("2026-03-04T08:00:00+01:00");

  private static final Exam EXAM =
      NoteReader.exam(
              Header.of(
                  Identifier.of("g-1"),
                  Party.of(Identifier.of("https://hospital.example/people", "p-17")),
                  OffsetDateTime.parse("2026-03-02T09:30:00+01:00")),
              "RAPD L 2+; disc R pink, L pale; IOP R 14 L 15")
          .orThrow();

  private final FhirReader exact = new FhirReader(Catalogue.standard());
  private final ForeignReader others = new ForeignReader(Catalogue.standard(), Options.usual());

  private static String written(Optional<OffsetDateTime> issued, boolean concluding) {
    return FhirWriter.of(BundleKind.COLLECTION)
        .reporting(new GivenOut(issued, concluding))
        .write(EXAM);
  }

  @Test
  void saysNeitherUnasked() {
    String plain = FhirWriter.of(BundleKind.COLLECTION).write(EXAM);
    assertEquals(plain, written(Optional.empty(), false));
    assertFalse(plain.contains("\"issued\"") || plain.contains("\"conclusion\""));
  }

  @Test
  void concludesInTheSentencesOfTheLetterAndSaysWhoseTheyAre() {
    assertFalse(Summary.of(EXAM).derived().isEmpty());
    String report = written(Optional.of(ISSUED), true);
    assertTrue(report.contains("\"issued\":\"2026-03-04T08:00:00+01:00\""), report);
    assertTrue(
        report.contains(
            "\"conclusion\":\"Derived from the findings, not written by the examiner. "
                + Summary.of(EXAM).derived().get(0)),
        report);
    assertEquals(EXAM, exact.read(report).orThrow());
  }

  @Test
  void keepsTheTimeOfIssueBesideTheRecord() {
    Reading reading = others.read(written(Optional.of(ISSUED), true)).orThrow();
    assertEquals(reading.resources().size(), reading.count("exact"));
    ReadExam read = reading.exams().get(0);
    assertEquals(EXAM, read.exam());
    String again = ForeignWriter.of(BundleKind.COLLECTION).write(read);
    assertTrue(again.contains("2026-03-04T08:00:00+01:00"), again);
    ReadExam back = others.read(again).orThrow().exams().get(0);
    assertEquals(EXAM, back.exam());
    assertEquals(read.carried(), back.carried());
  }

  @Test
  void takesNoOtherConclusionForItsOwn() {
    String other =
        written(Optional.empty(), true).replace("by the examiner. ", "by the examiner. No ");
    assertFalse(exact.read(other).isOk());
    Reading reading = others.read(other).orThrow();
    assertEquals(EXAM.facts(), reading.exams().get(0).exam().facts());
    assertTrue(reading.count("kept") > 0);
  }

  @Test
  void refusesATimeOfIssueThatIsNone() {
    String other = written(Optional.of(ISSUED), false).replace("2026-03-04T08", "2026-03-04T38");
    assertFalse(exact.read(other).isOk());
  }
}
