package org.isopter.model.exam;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.time.OffsetDateTime;
import java.time.ZoneOffset;
import java.util.List;
import java.util.Optional;
import java.util.Random;
import org.isopter.model.answer.sight.Correction;
import org.isopter.model.catalogue.Acuities;
import org.isopter.model.catalogue.AcuityReading;
import org.isopter.model.catalogue.Catalogue;
import org.isopter.model.catalogue.Pressures;
import org.isopter.model.catalogue.Pupils;
import org.isopter.model.finding.Finding;
import org.isopter.model.value.Absence;
import org.isopter.model.value.AcuityText;
import org.isopter.model.value.FaultException;
import org.isopter.model.value.Quantity;
import org.isopter.model.value.Result;
import org.isopter.model.value.Site;
import org.isopter.model.value.Unit;
import org.junit.jupiter.api.Test;

class ExamTest {

  private static final OffsetDateTime TIME = OffsetDateTime.parse("2026-03-02T09:30:00+01:00");
  private static final Header HEADER =
      Header.of(Identifier.of("e-1"), Party.of(Identifier.of("p-1")), TIME);

  @Test
  void givesTypedAccessByFindingAndEye() {
    Exam exam =
        new Exam(
            HEADER,
            List.of(
                Fact.of(Pressures.INTRAOCULAR, Site.LEFT, Quantity.of("15", Unit.MM_HG)),
                Fact.of(Pressures.INTRAOCULAR, Site.RIGHT, Quantity.of("14.0", Unit.MM_HG))));
    Optional<Quantity> right = exam.view().right().only(Pressures.INTRAOCULAR).map(Seen::value);
    assertEquals("14.0 mmHg", right.orElseThrow().toString());
  }

  @Test
  void notDoneIsNoValue() {
    Exam exam = new Exam(HEADER, List.of(Fact.absent(Pupils.DIRECT, Site.RIGHT, Absence.NOT_DONE)));
    assertTrue(exam.view().seen(Pupils.DIRECT).findAny().isEmpty());
    assertEquals(1, exam.view().facts(Pupils.DIRECT).count());
  }

  @Test
  void namesFactsByWhatTellsThemApart() {
    Exam exam =
        new Exam(
            HEADER,
            List.of(
                acuity("6/9", Correction.UNAIDED),
                acuity("6/6", Correction.SPECTACLES),
                acuity("6/5", Correction.SPECTACLES)));
    assertEquals(
        List.of(
            "distance-acuity.right.unaided",
            "distance-acuity.right.spectacles",
            "distance-acuity.right.spectacles.2"),
        exam.keys().stream().map(FactKey::text).toList());
  }

  @Test
  void keepsTheTimeOfTheExaminationInOnePlace() {
    Fact<?> fact =
        Fact.of(Pressures.INTRAOCULAR, Site.RIGHT, Quantity.of("14", Unit.MM_HG)).at(TIME);
    assertTrue(new Exam(HEADER, List.of(fact)).facts().get(0).at().isEmpty());
  }

  @Test
  void refusesAnAmendedRecordThatNamesNoOther() {
    assertTrue(refusal("e-2", Optional.empty()).contains("amends"));
  }

  @Test
  void refusesARecordThatAmendsItself() {
    String itself = refusal("e-2", Optional.of(Identifier.of("e-2")));
    assertTrue(itself.contains("give the amended record an id of its own"), itself);
    assertEquals(Status.AMENDED, amended("e-2", Optional.of(Identifier.of("e-1"))).status());
  }

  private static String refusal(String id, Optional<Identifier> amends) {
    return assertThrows(FaultException.class, () -> amended(id, amends)).getMessage();
  }

  private static Header amended(String id, Optional<Identifier> amends) {
    return new Header(
        Identifier.of(id),
        HEADER.subject(),
        Optional.empty(),
        TIME,
        Status.AMENDED,
        Optional.empty(),
        amends,
        Optional.empty());
  }

  @Test
  void refusesASiteThatTheFindingIsNotAbout() {
    assertThrows(
        IllegalArgumentException.class,
        () -> Fact.absent(Pupils.AFFERENT_DEFECT, Site.RIGHT, Absence.NOT_DONE));
  }

  @Test
  void everyRandomValueComesBackFromItsFirstOrderForm() {
    long seed = Long.getLong("seed", 5L);
    ExamSampler sampler = new ExamSampler(Catalogue.standard().all(), new Random(seed));
    for (Finding<?> finding : Catalogue.standard().all()) {
      for (int i = 0; i < 200; i++) {
        comesBack(sampler.fact(finding), "seed " + seed);
      }
    }
  }

  private static <V> void comesBack(Fact<V> fact, String name) {
    Optional<Result<V>> decoded = fact.panel().map(fact.finding().layout()::decode);
    assertEquals(fact.outcome().ifFound().map(Result::ok), decoded, name);
  }

  private static Fact<AcuityReading> acuity(String text, Correction correction) {
    AcuityReading reading = AcuityReading.of(AcuityText.parse(text).orThrow()).through(correction);
    return Fact.of(Acuities.DISTANCE, Site.RIGHT, reading);
  }

  @Test
  void knowsTheTimeOfTheExaminationOnAnyClock() {
    Fact<?> fact =
        Fact.of(Pressures.INTRAOCULAR, Site.RIGHT, Quantity.of("14", Unit.MM_HG))
            .at(TIME.withOffsetSameInstant(ZoneOffset.UTC));
    assertTrue(new Exam(HEADER, List.of(fact)).facts().get(0).at().isEmpty());
  }

  @Test
  void seesTwoValuesOfOneMomentTogether() {
    OffsetDateTime late = TIME.plusHours(2);
    Fact<Quantity> right =
        Fact.of(Pressures.INTRAOCULAR, Site.RIGHT, Quantity.of("14", Unit.MM_HG)).at(late);
    Fact<Quantity> left =
        Fact.of(Pressures.INTRAOCULAR, Site.LEFT, Quantity.of("15", Unit.MM_HG))
            .at(late.withOffsetSameInstant(ZoneOffset.UTC));
    ExamView view = ExamView.of(new Exam(HEADER, List.of(right, left)));
    Seen<Quantity> seen = view.right().only(Pressures.INTRAOCULAR).orElseThrow();
    assertTrue(seen.isWith(view.left().only(Pressures.INTRAOCULAR).orElseThrow()));
  }
}
