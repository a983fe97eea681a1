package org.isopter.mapper.hapi;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Random;
import org.hl7.fhir.r4.model.Bundle;
import org.hl7.fhir.r4.model.Observation;
import org.hl7.fhir.r4.model.Quantity;
import org.isopter.mapper.fhir.BundleKind;
import org.isopter.mapper.fhir.FhirReader;
import org.isopter.mapper.fhir.FhirWriter;
import org.isopter.model.catalogue.Catalogue;
import org.isopter.model.catalogue.Pressures;
import org.isopter.model.exam.Exam;
import org.isopter.model.exam.ExamSampler;
import org.isopter.model.exam.Fact;
import org.isopter.model.exam.Header;
import org.isopter.model.exam.Identifier;
import org.isopter.model.exam.Party;
import org.isopter.model.value.FaultException;
import org.isopter.model.value.Site;
import org.isopter.model.value.Unit;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;

/** HAPI's strict parser is the outside witness that what is written is FHIR R4. */
class HapiRimTest {

  private static final long SEED = Long.getLong("seed", 7L);
  private static final FhirReader READER = new FhirReader(Catalogue.standard());

  @ParameterizedTest
  @EnumSource(BundleKind.class)
  void xmlAndObjectsGiveBackEveryExamination(BundleKind kind) {
    ExamSampler exams = new ExamSampler(Catalogue.standard().all(), new Random(SEED));
    for (int i = 0; i < 60; i++) {
      Exam exam = exams.next();
      String name = "seed " + SEED + ", examination " + i;
      String xml = FhirXml.toXml(FhirWriter.of(kind).write(exam));
      assertEquals(exam, READER.read(FhirXml.toJson(xml)).orThrow(), name);
      Bundle objects = HapiBundles.of(exam, kind);
      assertEquals(exam, HapiBundles.read(objects, Catalogue.standard()).orThrow(), name);
    }
  }

  @Test
  void givesTypedResourcesToJavaCallers() {
    Bundle bundle = HapiBundles.of(pressure(), BundleKind.COLLECTION);
    Quantity value =
        bundle.getEntry().stream()
            .map(Bundle.BundleEntryComponent::getResource)
            .filter(Observation.class::isInstance)
            .map(Observation.class::cast)
            .filter(Observation::hasValueQuantity)
            .map(Observation::getValueQuantity)
            .findFirst()
            .orElseThrow();
    assertEquals("14", value.getValue().toPlainString());
    assertEquals("mm[Hg]", value.getCode());
  }

  @Test
  void refusesAnObjectThatWasChangedToAnotherUnit() {
    Bundle bundle = HapiBundles.of(pressure(), BundleKind.COLLECTION);
    bundle.getEntry().forEach(entry -> changeUnit(entry.getResource()));
    var faults = HapiBundles.read(bundle, Catalogue.standard()).faults();
    assertTrue(
        faults.stream().anyMatch(f -> f.path().endsWith("valueQuantity.code")), faults.toString());
  }

  @Test
  void refusesXmlWithAnElementThatFhirDoesNotKnow() {
    String xml = "<Observation xmlns=\"http://hl7.org/fhir\"><sideways value=\"1\"/></Observation>";
    FaultException refused = assertThrows(FaultException.class, () -> FhirXml.toJson(xml));
    assertTrue(refused.getMessage().contains("sideways"), refused.getMessage());
  }

  @Test
  void refusesExternalEntities() {
    String xml =
        "<!DOCTYPE o [<!ENTITY x SYSTEM \"file:///etc/hostname\">]>"
            + "<Observation xmlns=\"http://hl7.org/fhir\"><note><text value=\"&x;\"/></note>"
            + "</Observation>";
    assertThrows(FaultException.class, () -> FhirXml.toJson(xml));
  }

  private static void changeUnit(org.hl7.fhir.r4.model.Resource resource) {
    if (resource instanceof Observation observation && observation.hasValueQuantity()) {
      observation.getValueQuantity().setCode("kPa");
    }
  }

  private static Exam pressure() {
    Header header =
        Header.of(
            Identifier.of("e-1"),
            Party.of(Identifier.of("p-1")),
            java.time.OffsetDateTime.parse("2026-03-02T09:30:00+01:00"));
    return new Exam(
        header,
        java.util.List.of(
            Fact.of(
                Pressures.INTRAOCULAR,
                Site.RIGHT,
                org.isopter.model.value.Quantity.of("14", Unit.MM_HG))));
  }
}
