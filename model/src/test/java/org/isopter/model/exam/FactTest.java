package org.isopter.model.exam;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.Random;
import java.util.stream.Stream;
import org.isopter.model.answer.pupil.Lighting;
import org.isopter.model.answer.tissue.FundusMethod;
import org.isopter.model.answer.tissue.Tonometry;
import org.isopter.model.catalogue.Acuities;
import org.isopter.model.catalogue.AcuityReading;
import org.isopter.model.catalogue.Catalogue;
import org.isopter.model.catalogue.Pressures;
import org.isopter.model.catalogue.Pupils;
import org.isopter.model.finding.Finding;
import org.isopter.model.value.Absence;
import org.isopter.model.value.Acuity;
import org.isopter.model.value.Concept;
import org.isopter.model.value.Fault;
import org.isopter.model.value.FaultException;
import org.isopter.model.value.Quantity;
import org.isopter.model.value.Site;
import org.isopter.model.value.Unit;
import org.junit.jupiter.api.DynamicTest;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.TestFactory;

/** Nothing that the catalogue forbids can be stated as a fact. */
class FactTest {

  private static Fault refused(org.junit.jupiter.api.function.Executable make) {
    List<Fault> faults = assertThrows(FaultException.class, make).faults();
    assertEquals(1, faults.size(), faults.toString());
    return faults.get(0);
  }

  private static Fact<Quantity> pressure(String value, Unit unit) {
    return Fact.of(Pressures.INTRAOCULAR, Site.RIGHT, Quantity.of(value, unit));
  }

  @Test
  void refusesAPressureBeyondItsRange() {
    Fault fault = refused(() -> pressure("900", Unit.MM_HG));
    assertEquals("findings.intraocular-pressure.right.value", fault.path());
    assertEquals("900 mmHg", fault.seen());
    assertTrue(fault.wanted().contains("80"), fault.wanted());
    assertEquals("80", pressure("80", Unit.MM_HG).outcome().ifFound().orElseThrow().value() + "");
  }

  @Test
  void refusesAnotherUnit() {
    Fault fault = refused(() -> pressure("2.1", new Unit("kPa", "kPa")));
    assertEquals("2.1 kPa", fault.seen());
    assertTrue(fault.wanted().contains("mmHg"), fault.wanted());
  }

  @Test
  void refusesMoreDecimalsThanAreRecorded() {
    refused(() -> pressure("14.2555", Unit.MM_HG));
  }

  @Test
  void refusesATechniqueOfAnotherFinding() {
    Pupils.Size size = new Pupils.Size(Quantity.of("4", Unit.MILLIMETRE), Lighting.BRIGHT);
    Fault none = refused(() -> Fact.of(Pupils.SIZE, Site.RIGHT, size).by(Tonometry.PALPATION));
    assertEquals("findings.pupil-size.right.method", none.path());
    assertEquals("no technique", none.wanted());
    Fault other = refused(() -> pressure("14", Unit.MM_HG).by(FundusMethod.PHOTOGRAPH));
    assertTrue(other.wanted().contains("goldmann"), other.wanted());
  }

  @Test
  void refusesNotImprovedAsAnAcuityWithoutAPinhole() {
    AcuityReading reading = AcuityReading.of(new Acuity.NotImproved());
    Fault fault = refused(() -> Fact.of(Acuities.DISTANCE, Site.LEFT, reading));
    assertTrue(fault.path().startsWith("findings.distance-acuity.left"), fault.path());
    assertEquals(Site.LEFT, Fact.of(Acuities.PINHOLE, Site.LEFT, reading).site());
  }

  @Test
  void namesTheArgumentThatIsMissing() {
    NullPointerException none =
        assertThrows(
            NullPointerException.class,
            () -> Fact.of(Pressures.INTRAOCULAR, null, Quantity.of("14", Unit.MM_HG)));
    assertEquals("a fact needs a site", none.getMessage());
  }

  @TestFactory
  Stream<DynamicTest> refusesASiteThatTheFindingDoesNotHave() {
    return Catalogue.standard().all().stream()
        .filter(finding -> finding.sites().size() < Site.values().length)
        .map(finding -> DynamicTest.dynamicTest(finding.id(), () -> refusesOtherSites(finding)));
  }

  private static void refusesOtherSites(Finding<?> finding) {
    for (Site site : Site.values()) {
      if (!finding.sites().contains(site)) {
        Fault fault = refused(() -> Fact.absent(finding, site, Absence.REFUSED));
        assertEquals(site.word(), fault.seen());
      }
    }
  }

  @TestFactory
  Stream<DynamicTest> takesWhatTheCatalogueAllows() {
    ExamSampler sampler = new ExamSampler(Catalogue.standard().all(), new Random(20261127));
    return Catalogue.standard().all().stream()
        .map(finding -> DynamicTest.dynamicTest(finding.id(), () -> takes(sampler, finding)));
  }

  private static void takes(ExamSampler sampler, Finding<?> finding) {
    for (int i = 0; i < 50; i++) {
      Fact<?> fact = sampler.fact(finding);
      boolean known =
          finding.methods().map(all -> all.concepts().containsAll(method(fact))).orElse(true);
      assertTrue(known, fact.toString());
      fact.panel().ifPresent(panel -> assertEquals(List.of(), finding.layout().check(panel)));
    }
  }

  private static List<Concept> method(Fact<?> fact) {
    return fact.method().stream().toList();
  }
}
