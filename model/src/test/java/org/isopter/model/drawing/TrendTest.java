package org.isopter.model.drawing;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.time.OffsetDateTime;
import java.util.List;
import java.util.Random;
import java.util.regex.Pattern;
import org.isopter.model.catalogue.Catalogue;
import org.isopter.model.exam.Exam;
import org.isopter.model.exam.ExamSampler;
import org.isopter.model.exam.Header;
import org.isopter.model.exam.Identifier;
import org.isopter.model.exam.Party;
import org.isopter.model.note.NoteReader;
import org.junit.jupiter.api.Test;

final class TrendTest {

  private static Exam exam(String day, String note) {
    Header header =
        Header.of(
            Identifier.of(day),
            Party.of(Identifier.of("p-1")),
            OffsetDateTime.parse(day + "T09:30:00+01:00"));
    return NoteReader.exam(header, note).orThrow();
  }

  private static int count(String text, String part) {
    return text.split(Pattern.quote(part), -1).length - 1;
  }

  private static int joined(String shapes) {
    return (int) Pattern.compile("M[0-9.]+ [0-9.]+ L").matcher(shapes).results().count();
  }

  @Test
  void drawsEachVisitAndTheLimitAroundTheFirst() {
    Picture acuity =
        Trend.of(
                List.of(
                    exam("2026-06-01", "VA L 0.40 logMAR"),
                    exam("2026-03-01", "VA L 0.20 logMAR R 0.00 logMAR")))
            .get(0);

    // Three points; the left line alone has two of them to join.
    assertEquals(3, count(acuity.shapes(), "rx=\"4\""));
    assertEquals(1, joined(acuity.shapes()));
    assertTrue(acuity.description().contains("0.18 to 0.33 logMAR"), acuity.description());
    assertTrue(acuity.description().contains("2026-03-01"), acuity.description());
    // Two bands of the left eye, of the least and of the greatest published limit.
    assertEquals(2, count(acuity.shapes(), "fill-opacity=\"0.1\""));
  }

  @Test
  void drawsBetterAcuityHigher() {
    String shapes =
        Trend.of(
                List.of(
                    exam("2026-03-01", "VA R 0.00 logMAR"), exam("2026-06-01", "VA R 0.60 logMAR")))
            .get(0)
            .shapes();
    var points = Pattern.compile("cy=\"([0-9.]+)\" rx=\"4\"").matcher(shapes);
    assertTrue(points.find());
    double first = Double.parseDouble(points.group(1));
    assertTrue(points.find());
    assertTrue(first < Double.parseDouble(points.group(1)), shapes);
  }

  @Test
  void joinsNoResultsThatWereFoundInAnotherWay() {
    List<Picture> pictures =
        Trend.of(List.of(exam("2026-03-01", "IOP R 14 GAT"), exam("2026-06-01", "IOP R 20 NCT")));

    assertEquals(List.of(), pictures);
  }

  @Test
  void breaksTheLineWhereThereIsNoNumber() {
    String shapes =
        Trend.of(
                List.of(
                    exam("2026-03-01", "VA R 6/60"),
                    exam("2026-04-01", "VA R CF 1 m"),
                    exam("2026-05-01", "VA R 6/60")))
            .get(0)
            .shapes();

    assertEquals(0, joined(shapes));
    assertEquals(2, count(shapes, "rx=\"4\""));
    assertTrue(shapes.contains("no number"), shapes);
  }

  @Test
  void saysWhereNoLimitIsCarried() {
    Picture pressure =
        Trend.of(List.of(exam("2026-03-01", "IOP R 14 GAT"), exam("2026-06-01", "IOP R 20 GAT")))
            .get(0);

    assertTrue(pressure.description().contains("No test-retest limit"), pressure.description());
    assertEquals(0, count(pressure.shapes(), "fill-opacity"));
    assertFalse(pressure.description().contains("Left eye. a"), pressure.description());
  }

  @Test
  void drawsWhateverWasRecorded() {
    ExamSampler exams = new ExamSampler(Catalogue.standard().all(), new Random(173205));
    for (int i = 0; i < 60; i++) {
      Trend.of(List.of(exams.next(), exams.next(), exams.next()))
          .forEach(picture -> assertFalse(picture.svg().contains("NaN"), picture.svg()));
    }
  }
}
