package org.isopter.model.exam;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertNotEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.time.OffsetDateTime;
import java.time.ZoneOffset;
import java.util.List;
import org.isopter.model.answer.sight.Correction;
import org.isopter.model.answer.tissue.Tonometry;
import org.isopter.model.catalogue.Acuities;
import org.isopter.model.catalogue.AcuityReading;
import org.isopter.model.catalogue.Pressures;
import org.isopter.model.value.AcuityText;
import org.isopter.model.value.Quantity;
import org.isopter.model.value.Site;
import org.isopter.model.value.Unit;
import org.junit.jupiter.api.Test;

/** Two facts are of one measurement when all agrees that tells measurements apart. */
class MeasurementTest {

  private static final OffsetDateTime LATER = OffsetDateTime.parse("2026-03-02T11:00:00+01:00");

  private static Fact<Quantity> pressure(Site eye, String mmHg) {
    return Fact.of(Pressures.INTRAOCULAR, eye, Quantity.of(mmHg, Unit.MM_HG));
  }

  private static Fact<AcuityReading> acuity(Site eye, String text, Correction through) {
    AcuityReading reading = AcuityReading.of(AcuityText.parse(text).orThrow());
    return Fact.of(Acuities.DISTANCE, eye, reading.through(through));
  }

  private static boolean same(Fact<?> one, Fact<?> other) {
    return Measurement.of(one).equals(Measurement.of(other));
  }

  @Test
  void isTheSameWhateverCameOfIt() {
    assertTrue(same(pressure(Site.RIGHT, "14"), pressure(Site.RIGHT, "30")));
    assertTrue(
        same(
            acuity(Site.LEFT, "6/6", Correction.UNAIDED),
            acuity(Site.LEFT, "CF 1 m", Correction.UNAIDED)));
  }

  @Test
  void differsByEyeTechniqueConditionAndTime() {
    Fact<Quantity> plain = pressure(Site.RIGHT, "14");
    assertFalse(same(plain, pressure(Site.LEFT, "14")));
    assertFalse(same(plain, plain.by(Tonometry.GOLDMANN)));
    assertFalse(same(plain.by(Tonometry.REBOUND), plain.by(Tonometry.GOLDMANN)));
    assertFalse(same(plain, plain.at(LATER)));
    assertFalse(
        same(
            acuity(Site.LEFT, "6/6", Correction.UNAIDED),
            acuity(Site.LEFT, "6/6", Correction.SPECTACLES)));
  }

  @Test
  void nothingElseTellsItApart() {
    Fact<Quantity> plain = pressure(Site.RIGHT, "14");
    assertTrue(same(plain, plain.with("a tonometer").remarks(List.of("squeezing"))));
  }

  @Test
  void namesEachFactOfARecordOnce() {
    List<Fact<?>> facts =
        List.of(
            pressure(Site.RIGHT, "30").by(Tonometry.NON_CONTACT),
            pressure(Site.RIGHT, "18").by(Tonometry.GOLDMANN),
            pressure(Site.RIGHT, "19").by(Tonometry.GOLDMANN));
    assertEquals(
        List.of(
            "intraocular-pressure.right.non-contact",
            "intraocular-pressure.right.goldmann",
            "intraocular-pressure.right.goldmann.2"),
        FactKey.of(facts).stream().map(FactKey::text).toList());
  }

  @Test
  void knowsItsFellow() {
    Measurement right = Measurement.of(pressure(Site.RIGHT, "14"));
    assertTrue(right.isFellowOf(Measurement.of(pressure(Site.LEFT, "20"))));
    assertFalse(right.isFellowOf(right));
    assertNotEquals(right, Measurement.of(pressure(Site.LEFT, "14")));
    assertFalse(right.isFellowOf(Measurement.of(pressure(Site.LEFT, "14").by(Tonometry.GOLDMANN))));
  }

  @Test
  void aMomentIsTheSameOnEveryClock() {
    Fact<Quantity> here = pressure(Site.RIGHT, "14").at(LATER);
    Fact<Quantity> there = here.at(LATER.withOffsetSameInstant(ZoneOffset.UTC));
    assertTrue(same(here, there));
    assertFalse(same(here, here.at(LATER.withOffsetSameLocal(ZoneOffset.UTC))));
  }
}
