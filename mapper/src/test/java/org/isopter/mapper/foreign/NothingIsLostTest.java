package org.isopter.mapper.foreign;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import org.isopter.mapper.fhir.BundleKind;
import org.isopter.mapper.foreign.reading.Carried;
import org.isopter.mapper.foreign.reading.Options;
import org.isopter.mapper.foreign.reading.ReadExam;
import org.isopter.mapper.foreign.reading.ReadResource;
import org.isopter.mapper.foreign.reading.Reading;
import org.isopter.mapper.foreign.reading.ResourceOutcome;
import org.isopter.mapper.foreign.vocabulary.ForeignRules;
import org.isopter.mapper.hapi.FhirXml;
import org.isopter.mapper.json.PlacedLeaf;
import org.isopter.mapper.json.Raw;
import org.isopter.mapper.json.RawJson;
import org.isopter.model.catalogue.Catalogue;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;

/** What was read is written out again with every leaf that was kept, and reads as before. */
class NothingIsLostTest {

  private static final ForeignReader READER =
      new ForeignReader(Catalogue.standard(), Options.usual());

  @ParameterizedTest
  @EnumSource(BundleKind.class)
  void readsAgainWhatItWrote(BundleKind kind) {
    for (String json : inputs()) {
      Reading first = READER.read(json).orThrow();
      for (ReadExam exam : first.exams()) {
        String written = ForeignWriter.of(kind).write(exam);
        Reading second = READER.read(written).orThrow();
        assertEquals(1, second.exams().size(), written);
        assertEquals(exam.exam(), second.exams().get(0).exam(), written);
        assertEquals(exam.carried(), second.exams().get(0).carried(), written);
        assertEquals(written, ForeignWriter.of(kind).write(second.exams().get(0)));
      }
    }
  }

  @Test
  void readsAgainWhatItWroteWithoutAnExamination() {
    ForeignWriter writer = ForeignWriter.of(BundleKind.COLLECTION);
    for (String json : inputs()) {
      Carried carried = READER.read(json).orThrow().carried();
      if (!carried.isEmpty()) {
        String written = writer.write(carried);
        Reading second = READER.read(written).orThrow();
        assertEquals(List.of(), second.exams(), written);
        assertEquals(carried, second.carried(), written);
        assertEquals(written, writer.write(second.carried()));
      }
    }
  }

  @Test
  void writesEveryLeafThatNobodyTook() {
    for (String json : inputs()) {
      Reading reading = READER.read(json).orThrow();
      StringBuilder written = new StringBuilder();
      reading
          .exams()
          .forEach(e -> written.append(ForeignWriter.of(BundleKind.COLLECTION).write(e)));
      written.append(ForeignWriter.of(BundleKind.COLLECTION).write(reading.carried()));
      for (ReadResource read : reading.resources()) {
        for (PlacedLeaf leaf : kept(read)) {
          String text = RawJson.write(leaf.value());
          boolean there = written.indexOf(text) >= 0 || written.indexOf(escaped(text)) >= 0;
          assertTrue(there, () -> leaf + " of " + read.name() + " is not in " + written);
        }
      }
    }
  }

  /** HAPI's strict parser is the outside witness that left-overs make no FHIR that is none. */
  @Test
  void writesFhirThatTheReferenceParserReads() {
    for (String shape :
        List.of(
            "eye-by-body-site.json",
            "eye-by-extension.json",
            "eye-by-structure.json",
            "panel-of-components.json",
            "perimetry-in-report.json",
            "shorthand-in-text.json",
            "refraction-in-pieces.json",
            "findings-by-code.json",
            "local-codes.json",
            "orders-and-others.json")) {
      for (ReadExam exam : ForeignRecordsPageTest.read(shape).exams()) {
        String json = ForeignWriter.of(BundleKind.COLLECTION).write(exam);
        String again = FhirXml.toJson(FhirXml.toXml(json));
        assertEquals(exam.exam(), READER.read(again).orThrow().exams().get(0).exam(), shape);
      }
    }
  }

  @Test
  void putsBackInPlaceWhatFindsItsPlaceFree() {
    String json = takes("visit-encounter");
    ReadExam exam = READER.read(json).orThrow().exams().get(0);
    String written = ForeignWriter.of(BundleKind.COLLECTION).write(exam);
    assertTrue(written.contains("\"encounter\":{\"reference\":\"Encounter/e\"}"), written);
  }

  @Test
  void keepsWhatItCarriesBesideTheRecord() {
    for (String json : inputs()) {
      for (ReadExam exam : READER.read(json).orThrow().exams()) {
        assertEquals(exam.carried(), Carried.of(exam.carried().toJson()).orThrow());
      }
    }
  }

  @Test
  void losesNothingOfAFolderThatIsReadTogether() {
    together(Foreign.own().resolve("guide"));
    Foreign.published().ifPresent(all -> together(all.resolve("hl7-eyecare-ig")));
  }

  private static void together(Path folder) {
    Reading first = READER.readTogether(Foreign.documents(folder));
    assertEquals(11, first.count("translated"), first.resources().toString());
    for (ReadExam exam : first.exams()) {
      String written = ForeignWriter.of(BundleKind.COLLECTION).write(exam);
      Reading second = READER.read(written).orThrow();
      assertEquals(exam.exam(), second.exams().get(0).exam());
      assertEquals(exam.carried(), second.exams().get(0).carried());
    }
  }

  private static String takes(String rule) {
    return ForeignRules.byId(rule).orElseThrow().takes().json();
  }

  private static List<String> inputs() {
    List<String> inputs = new ArrayList<>();
    ForeignRules.all().forEach(rule -> inputs.add(rule.takes().json()));
    ForeignRules.all().forEach(rule -> inputs.add(rule.refuses().json()));
    for (String shape : ForeignRecordsPageTest.SHAPES) {
      if (shape.endsWith(".json")) {
        inputs.add(Foreign.text(ForeignRecordsPageTest.file(shape)));
      }
    }
    Foreign.jsonFiles().forEach(file -> inputs.add(Foreign.text(file)));
    return inputs;
  }

  private static List<PlacedLeaf> kept(ReadResource read) {
    return read.outcome() instanceof ResourceOutcome.Translated translated
        ? translated.leftover()
        : read.outcome() instanceof ResourceOutcome.Kept ? read.resource().leaves() : List.of();
  }

  private static String escaped(String text) {
    String inner = RawJson.write(Raw.of(text));
    return inner.substring(1, inner.length() - 1);
  }
}
