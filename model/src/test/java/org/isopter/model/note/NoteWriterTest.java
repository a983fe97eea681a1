package org.isopter.model.note;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.time.OffsetDateTime;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Random;
import java.util.Set;
import java.util.stream.Stream;
import org.isopter.model.answer.sight.Chart;
import org.isopter.model.catalogue.Acuities;
import org.isopter.model.catalogue.AcuityReading;
import org.isopter.model.catalogue.Catalogue;
import org.isopter.model.catalogue.FieldFeatures;
import org.isopter.model.catalogue.Fields;
import org.isopter.model.catalogue.Pressures;
import org.isopter.model.exam.Exam;
import org.isopter.model.exam.ExamSampler;
import org.isopter.model.exam.Fact;
import org.isopter.model.exam.Header;
import org.isopter.model.exam.Identifier;
import org.isopter.model.exam.Party;
import org.isopter.model.finding.Finding;
import org.isopter.model.value.Acuity;
import org.isopter.model.value.Quantity;
import org.isopter.model.value.Site;
import org.isopter.model.value.Unit;
import org.junit.jupiter.api.DynamicTest;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.TestFactory;

/** What is written in shorthand is read back as the same facts. */
class NoteWriterTest {

  private static final OffsetDateTime DAY = OffsetDateTime.parse("2026-03-02T09:30:00+01:00");
  private static final NoteWriter WRITER = NoteWriter.performed(DAY);
  private static final long SEED = 20260302L;

  /** Figures that a perimeter prints; nobody says them at the bedside. */
  private static final Set<String> OF_PERIMETERS =
      Set.of(
          "visual-field-mean-deviation",
          "visual-field-pattern-standard-deviation",
          "visual-field-index",
          "visual-field-fixation-losses",
          "visual-field-false-positives",
          "visual-field-false-negatives",
          "visual-field-test-duration",
          "vertical-disc-diameter",
          "corneal-curvature");

  @TestFactory
  Stream<DynamicTest> readsBackWhatItWrites() {
    return Catalogue.standard().all().stream()
        .filter(finding -> !OF_PERIMETERS.contains(finding.id()))
        .map(finding -> DynamicTest.dynamicTest(finding.id(), () -> readsBack(finding)));
  }

  private static <V> void readsBack(Finding<V> finding) {
    ExamSampler sampler = new ExamSampler(List.of(finding), new Random(SEED));
    int said = 0;
    for (int i = 0; i < 150; i++) {
      Fact<?> fact = onTheDay(plain(sampler.fact(finding)), i);
      assertEquals(sayable(fact), WRITER.canSay(fact), () -> SEED + ": " + FactLines.of(fact));
      if (WRITER.canSay(fact)) {
        String text = WRITER.write(List.of(fact)).orThrow();
        Note note = NoteReader.performed(DAY).read(text);
        assertEquals(List.of(), note.unread(), () -> SEED + ": " + text);
        assertEquals(List.of(fact), note.facts(), () -> SEED + ": " + text);
        said++;
      }
    }
    assertTrue(said > 15, finding + " was said only " + said + " times");
  }

  private static boolean isLine(Acuity acuity) {
    return acuity instanceof Acuity.DecimalFraction
        || (acuity instanceof Acuity.Fraction line && line.letters() == 0);
  }

  /** Says where shorthand has words for a fact without remarks and device, on the day. */
  private static boolean sayable(Fact<?> fact) {
    Set<String> parts = fact.panel().map(panel -> panel.parts().keySet()).orElse(Set.of());
    boolean absent = fact.panel().isEmpty();
    Object value = fact.outcome().<Object>fold(found -> found, reason -> reason);
    if (value instanceof AcuityReading acuity) {
      boolean near = acuity.chart().equals(Optional.of(Chart.NEAR_CARD));
      boolean far = fact.finding().equals(Acuities.DISTANCE);
      return (!near || !far)
          && (acuity.readInPart().isEmpty() || (acuity.isInPart() && isLine(acuity.acuity())));
    }
    if (fact.finding().equals(FieldFeatures.ISOPTER)) {
      return absent || parts.size() > 1;
    }
    if (fact.finding().equals(Fields.BLIND_SPOT)) {
      return absent || parts.equals(Set.of("spot-size"));
    }
    boolean field = fact.finding().equals(Fields.CONFRONTATION);
    return absent || !field || !Set.of("target", "distance").containsAll(parts);
  }

  private static <V> Fact<V> plain(Fact<V> fact) {
    return fact.withoutTime().withoutDevice().remarks(List.of());
  }

  private static Fact<?> onTheDay(Fact<?> fact, int i) {
    return i % 4 == 0 ? fact.at(DAY.withHour(i % 24).withMinute(i % 60)) : fact;
  }

  @Test
  void hasNoWordsForTheFiguresOfAPerimeter() {
    ExamSampler sampler = new ExamSampler(Catalogue.standard().all(), new Random(SEED));
    for (String id : OF_PERIMETERS) {
      Fact<?> fact = sampler.fact(Catalogue.standard().byId(id).orElseThrow());
      assertFalse(WRITER.canSay(plain(fact)), id);
    }
  }

  @Test
  void readsBackAWholeExamination() {
    ExamSampler sampler = new ExamSampler(Catalogue.standard().all(), new Random(SEED));
    int said = 0;
    for (int i = 0; i < 250; i++) {
      Exam exam = new Exam(header(), distinct(sampler.next().facts()));
      String text = NoteWriter.write(exam).orThrow();
      Exam again = NoteReader.exam(header(), text).orThrow();
      assertEquals(exam, again, () -> SEED + ": " + text);
      said += exam.facts().size();
    }
    assertTrue(said > 800, "only " + said + " facts");
  }

  /** Returns the facts that can be said, one of each finding and site. */
  private static List<Fact<?>> distinct(List<Fact<?>> facts) {
    List<Fact<?>> some = new ArrayList<>();
    for (Fact<?> any : facts) {
      Fact<?> fact = plain(any);
      boolean seen =
          some.stream().anyMatch(f -> f.finding() == fact.finding() && f.site() == fact.site());
      if (!seen && WRITER.canSay(fact)) {
        some.add(fact);
      }
    }
    return some;
  }

  @Test
  void cannotSayARemarkADeviceOrATimeOnAnotherDay() {
    Fact<?> fact = pressure("14");
    assertTrue(WRITER.canSay(fact));
    assertFalse(WRITER.canSay(fact.remarks(List.of("Sore lid"))));
    assertFalse(WRITER.canSay(fact.with("a tonometer")));
    assertFalse(WRITER.canSay(fact.at(DAY.plusDays(1))));
    assertFalse(WRITER.canSay(fact.at(DAY.plusSeconds(1))));
    assertFalse(NoteWriter.standard().canSay(fact.at(DAY)));
  }

  @Test
  void namesEveryFactThatItCannotSay() {
    List<Fact<?>> facts =
        List.of(
            pressure("14").with("a tonometer"),
            Fact.of(Pressures.INTRAOCULAR, Site.LEFT, Quantity.of("15", Unit.MM_HG))
                .remarks(List.of("Sore lid")));
    assertEquals(2, WRITER.write(facts).faults().size());
    assertEquals("intraocular-pressure.right", WRITER.write(facts).faults().get(0).path());
  }

  @Test
  void refusesTwoFactsThatNothingTellsApart() {
    assertEquals(1, WRITER.write(List.of(pressure("14"), pressure("16"))).faults().size());
    assertEquals(1, WRITER.write(List.of(pressure("14"), pressure("14"))).faults().size());
  }

  @Test
  void writesOneItemALine() {
    assertEquals("IOP R 14\n", WRITER.write(List.of(pressure("14"))).orThrow());
    assertEquals("", WRITER.write(List.of()).orThrow());
  }

  private static Fact<Quantity> pressure(String digits) {
    return Fact.of(Pressures.INTRAOCULAR, Site.RIGHT, Quantity.of(digits, Unit.MM_HG));
  }

  private static Header header() {
    return Header.of(Identifier.of("e-1"), Party.of(Identifier.of("p-1")), DAY);
  }
}
