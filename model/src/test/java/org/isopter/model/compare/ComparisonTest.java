package org.isopter.model.compare;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.time.OffsetDateTime;
import java.util.Arrays;
import java.util.List;
import org.isopter.model.answer.sight.Chart;
import org.isopter.model.answer.tissue.Tonometry;
import org.isopter.model.catalogue.Acuities;
import org.isopter.model.catalogue.AcuityReading;
import org.isopter.model.catalogue.Pressures;
import org.isopter.model.exam.Exam;
import org.isopter.model.exam.Fact;
import org.isopter.model.exam.Header;
import org.isopter.model.exam.Identifier;
import org.isopter.model.exam.Party;
import org.isopter.model.value.Absence;
import org.isopter.model.value.AcuityText;
import org.isopter.model.value.Quantity;
import org.isopter.model.value.Site;
import org.isopter.model.value.Unit;
import org.junit.jupiter.api.Test;

class ComparisonTest {

  private static Exam exam(String id, String person, String day, Fact<?>... facts) {
    Header header =
        Header.of(
            Identifier.of(id),
            Party.of(Identifier.of(person)),
            OffsetDateTime.parse(day + "T09:00:00Z"));
    return new Exam(header, Arrays.asList(facts));
  }

  private static Fact<AcuityReading> acuity(Site eye, String text, Chart chart) {
    return Fact.of(
        Acuities.DISTANCE, eye, AcuityReading.of(AcuityText.parse(text).orThrow()).on(chart));
  }

  private static Fact<Quantity> pressure(Site eye, String mmHg) {
    return Fact.of(Pressures.INTRAOCULAR, eye, Quantity.of(mmHg, Unit.MM_HG));
  }

  private static Change only(Exam one, Exam other) {
    List<Change> changes = Comparison.of(one, other).orThrow().changes();
    assertEquals(1, changes.size(), changes.toString());
    return changes.get(0);
  }

  @Test
  void putsTheEarlierExaminationFirst() {
    Exam late = exam("b", "p", "2026-06-01", pressure(Site.RIGHT, "12"));
    Exam early = exam("a", "p", "2026-03-01", pressure(Site.RIGHT, "15"));
    Change change = only(late, early);
    assertEquals("15 mmHg", change.before());
    assertEquals("-3 mmHg", change.by().orElseThrow().toString());
  }

  /** Rosser, Laidlaw and Murdoch 2001, BJO 85:432: 0.18 logMAR by letters in patients. */
  @Test
  void holdsLettersAgainstTheLimitOfLetterChartsInPatients() {
    Exam before = exam("a", "p", "2026-03-01", acuity(Site.LEFT, "80 letters", Chart.ETDRS));
    Exam within = exam("b", "p", "2026-06-01", acuity(Site.LEFT, "71 letters", Chart.ETDRS));
    Exam beyond = exam("c", "p", "2026-06-01", acuity(Site.LEFT, "70 letters", Chart.ETDRS));
    assertTrue(text(only(before, within)).contains("within the test-retest limit"));
    assertTrue(text(only(before, beyond)).contains("worse by more than"));
  }

  private static String text(Change change) {
    return change.verdict().orElseThrow().text();
  }

  @Test
  void saysWhatIsInOneRecordOnly() {
    Exam before = exam("a", "p", "2026-03-01", pressure(Site.RIGHT, "12"));
    Exam after = exam("b", "p", "2026-06-01", pressure(Site.LEFT, "12"));
    List<Change.Kind> kinds =
        Comparison.of(before, after).orThrow().changes().stream().map(Change::kind).toList();
    assertEquals(List.of(Change.Kind.ONLY_NOW, Change.Kind.ONLY_BEFORE), kinds);
  }

  @Test
  void givesNoNumberForASuffixWithoutAValue() {
    Exam before = exam("a", "p", "2026-03-01", acuity(Site.LEFT, "6/9", Chart.SNELLEN));
    Exam after = exam("b", "p", "2026-06-01", acuity(Site.LEFT, "6/9-2", Chart.SNELLEN));
    assertTrue(only(before, after).by().isEmpty(), "a suffix has no value on this chart");
  }

  @Test
  void refusesTwoPeople() {
    Exam one = exam("a", "p-1", "2026-03-01", pressure(Site.RIGHT, "12"));
    Exam other = exam("b", "p-2", "2026-06-01", pressure(Site.RIGHT, "12"));
    assertFalse(Comparison.of(one, other).isOk());
    assertEquals("subject", Comparison.of(one, other).faults().get(0).path());
  }

  /** Lim 2010, Eye 24:673 (0.18); Rosser, Laidlaw and Murdoch 2001, BJO 85:432 (0.33). */
  @Test
  void callsALineOfATraditionalChartNoChange() {
    Exam before = exam("a", "p", "2026-03-01", acuity(Site.LEFT, "6/6", Chart.SNELLEN));
    Exam line = exam("b", "p", "2026-06-01", acuity(Site.LEFT, "6/9", Chart.SNELLEN));
    Exam lines = exam("c", "p", "2026-06-01", acuity(Site.LEFT, "6/12", Chart.SNELLEN));
    Exam many = exam("d", "p", "2026-06-01", acuity(Site.LEFT, "6/18", Chart.SNELLEN));
    assertTrue(text(only(before, line)).contains("within the test-retest limit"));
    assertTrue(text(only(before, lines)).contains("limits for such charts disagree"));
    assertTrue(text(only(before, many)).contains("worse by more than"));
  }

  @Test
  void tellsThatSightWasLostAltogether() {
    Exam before = exam("a", "p", "2026-03-01", acuity(Site.LEFT, "6/5", Chart.SNELLEN));
    Exam after =
        exam(
            "b",
            "p",
            "2026-06-01",
            Fact.of(
                Acuities.DISTANCE, Site.LEFT, AcuityReading.of(AcuityText.parse("NLP").orThrow())));
    assertTrue(text(only(before, after)).contains("worse in the order"), text(only(before, after)));
    assertTrue(
        text(only(after, exam("c", "p", "2026-09-01", acuity(Site.LEFT, "6/5", Chart.SNELLEN))))
            .contains("better in the order"));
  }

  @Test
  void comparesATechniqueWithItself() {
    Exam before =
        exam(
            "a",
            "p",
            "2026-03-01",
            pressure(Site.RIGHT, "30").by(Tonometry.NON_CONTACT),
            pressure(Site.RIGHT, "18").by(Tonometry.GOLDMANN));
    Exam after = exam("b", "p", "2026-06-01", pressure(Site.RIGHT, "18").by(Tonometry.GOLDMANN));
    List<Change> changes = Comparison.of(before, after).orThrow().changes();
    assertEquals(
        List.of(Change.Kind.SAME, Change.Kind.ONLY_BEFORE),
        changes.stream().map(Change::kind).toList());
    assertTrue(changes.get(1).before().startsWith("30 mmHg"), changes.toString());
  }

  @Test
  void givesNoDifferenceBetweenTwoTechniques() {
    Exam before = exam("a", "p", "2026-03-01", pressure(Site.RIGHT, "15").by(Tonometry.GOLDMANN));
    Exam after = exam("b", "p", "2026-06-01", pressure(Site.RIGHT, "45").by(Tonometry.REBOUND));
    Exam unsaid = exam("c", "p", "2026-06-01", pressure(Site.RIGHT, "45"));
    assertEquals(Change.Kind.OTHER_TECHNIQUE, only(before, after).kind());
    assertTrue(only(before, after).by().isEmpty());
    assertEquals(Change.Kind.OTHER_TECHNIQUE, only(before, unsaid).kind());
    assertEquals(
        Change.Kind.DIFFERENT,
        only(unsaid, exam("d", "p", "2026-09-01", pressure(Site.RIGHT, "44"))).kind());
  }

  @Test
  void pairsRepeatedReadingsInTheirOrder() {
    Exam before =
        exam("a", "p", "2026-03-01", pressure(Site.RIGHT, "15"), pressure(Site.RIGHT, "17"));
    Exam after =
        exam("b", "p", "2026-06-01", pressure(Site.RIGHT, "15"), pressure(Site.RIGHT, "16"));
    List<Change> changes = Comparison.of(before, after).orThrow().changes();
    assertEquals(
        List.of(Change.Kind.SAME, Change.Kind.DIFFERENT),
        changes.stream().map(Change::kind).toList());
  }

  @Test
  void comparesWhatWasFoundWithWhatCouldNotBe() {
    Exam before = exam("a", "p", "2026-03-01", acuity(Site.LEFT, "6/5", Chart.SNELLEN));
    Exam after =
        exam("b", "p", "2026-06-01", Fact.absent(Acuities.DISTANCE, Site.LEFT, Absence.REFUSED));
    assertEquals(Change.Kind.DIFFERENT, only(before, after).kind());
    assertTrue(only(before, after).verdict().isEmpty());
  }

  @Test
  void aPressureThatWasDeclinedIsComparedWithTheOneThatWasMeasured() {
    Fact<Quantity> declined = Fact.absent(Pressures.INTRAOCULAR, Site.RIGHT, Absence.REFUSED);
    Exam before = exam("a", "p", "2026-03-01", declined);
    Exam after = exam("b", "p", "2026-06-01", pressure(Site.RIGHT, "18").by(Tonometry.GOLDMANN));
    Change gained = only(before, after);
    assertEquals(Change.Kind.DIFFERENT, gained.kind());
    assertEquals("declined", gained.before());
    Change lost = only(after, exam("c", "p", "2026-09-01", declined));
    assertEquals(Change.Kind.DIFFERENT, lost.kind());
    assertEquals("declined", lost.after());
  }

  @Test
  void aValueIsComparedWithAValueAndNotWithWhatWasDeclinedBefore() {
    Exam before =
        exam(
            "a",
            "p",
            "2026-03-01",
            Fact.absent(Pressures.INTRAOCULAR, Site.RIGHT, Absence.REFUSED),
            pressure(Site.RIGHT, "15"));
    Change change =
        Comparison.of(before, exam("b", "p", "2026-06-01", pressure(Site.RIGHT, "18")))
            .orThrow()
            .changes()
            .get(0);
    assertEquals("15 mmHg", change.before());
    assertEquals("3 mmHg", change.by().orElseThrow().toString());
  }

  @Test
  void aDeclinedMeasurementDoesNotHideAnotherTechnique() {
    Exam before =
        exam(
            "a",
            "p",
            "2026-03-01",
            Fact.absent(Pressures.INTRAOCULAR, Site.RIGHT, Absence.REFUSED),
            pressure(Site.RIGHT, "15").by(Tonometry.REBOUND));
    Exam after = exam("b", "p", "2026-06-01", pressure(Site.RIGHT, "18").by(Tonometry.GOLDMANN));
    List<Change> changes = Comparison.of(before, after).orThrow().changes();
    assertEquals(
        List.of(Change.Kind.OTHER_TECHNIQUE, Change.Kind.ONLY_BEFORE),
        changes.stream().map(Change::kind).toList());
    assertTrue(changes.get(0).by().isEmpty(), "two techniques give no difference");
  }

  @Test
  void oneReadingThatStandsTwiceIsTwoReadings() {
    Fact<Quantity> reading = pressure(Site.RIGHT, "15");
    Exam twice = exam("a", "p", "2026-03-01", reading, reading);
    List<Change.Kind> kinds =
        Comparison.of(twice, exam("b", "p", "2026-06-01", pressure(Site.RIGHT, "15")))
            .orThrow()
            .changes()
            .stream()
            .map(Change::kind)
            .toList();
    assertEquals(List.of(Change.Kind.SAME, Change.Kind.ONLY_BEFORE), kinds);
    Exam again = exam("c", "p", "2026-06-01", reading, reading);
    assertEquals(
        List.of(Change.Kind.SAME, Change.Kind.SAME),
        Comparison.of(twice, again).orThrow().changes().stream().map(Change::kind).toList());
  }
}
