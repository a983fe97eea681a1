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

  /**
   * Tonnu and others 2005, BJO 89:847, abstract: 2.2 mmHg by one observer; IOVS, article 2365240,
   * abstract: up to 4.6 mmHg between two.
   */
  @Test
  void shadesTheLimitOfGoldmannTonometry() {
    Picture pressure =
        Trend.of(List.of(exam("2026-03-01", "IOP R 14 GAT"), exam("2026-06-01", "IOP R 20 GAT")))
            .get(0);

    assertTrue(pressure.description().contains("2.2 to 4.6 mmHg"), pressure.description());
    assertTrue(pressure.description().contains("of one session"), pressure.description());
    assertFalse(pressure.description().contains("not shaded"), pressure.description());
    assertEquals(2, count(pressure.shapes(), "fill-opacity=\"0.1\""));
    // On the scale of 0 to 40 mmHg, 150 high: 9.2 mmHg are 34.5, 4.4 mmHg are 16.5.
    assertTrue(pressure.shapes().contains(" v-34.5 "), pressure.shapes());
    assertTrue(pressure.shapes().contains(" v-16.5 "), pressure.shapes());
    assertFalse(pressure.description().contains("Left eye. a"), pressure.description());
  }

  @Test
  void shadesNothingBelowNoPressure() {
    String shapes =
        Trend.of(List.of(exam("2026-03-01", "IOP R 3 GAT"), exam("2026-06-01", "IOP R 4 GAT")))
            .get(0)
            .shapes();

    // From 7.6 mmHg down to 0, not to -1.6.
    assertTrue(shapes.contains("M40 180 h200 v-28.5 "), shapes);
  }

  @Test
  void saysWhereNoLimitIsCarried() {
    for (String note : List.of("IOP R 14 ", "IOP R 14 rebound", "ishihara R 13/15")) {
      Picture picture =
          Trend.of(List.of(exam("2026-03-01", note), exam("2026-06-01", note))).get(0);

      assertTrue(
          picture.description().contains("no published test-retest limit"), picture.description());
      assertEquals(0, count(picture.shapes(), "fill-opacity"));
    }
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
