package org.isopter.mapper.foreign;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.ArrayList;
import java.util.Collections;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Random;
import org.isopter.mapper.fhir.BundleKind;
import org.isopter.mapper.fhir.FhirWriter;
import org.isopter.mapper.foreign.document.Neighbours;
import org.isopter.mapper.foreign.reading.Options;
import org.isopter.mapper.foreign.reading.ReadExam;
import org.isopter.mapper.foreign.reading.Reading;
import org.isopter.mapper.json.Limits;
import org.isopter.mapper.json.Raw;
import org.isopter.mapper.json.RawJson;
import org.isopter.model.catalogue.Catalogue;
import org.isopter.model.exam.Exam;
import org.isopter.model.exam.ExamSampler;
import org.junit.jupiter.api.Test;

/**
 * What was written here reads exact from histories, exports and pages of many records. The shapes
 * are those of FHIR R4, "Bundle" and "RESTful API", and of the bulk data export.
 */
class ReturnedWrappingsTest {

  private static final long SEED = Long.getLong("seed", 20261127L);
  private static final int EXAMS = Integer.getInteger("own.exams", 40);
  private static final ForeignReader READER =
      new ForeignReader(Catalogue.standard(), Options.usual());
  private static final RawJson JSON = new RawJson(Limits.USUAL);
  private static final String SERVER = "https://server.example/fhir/";

  private static final List<String> GUESTS =
      List.of(
          "{\"resourceType\":\"OperationOutcome\",\"issue\":[{\"severity\":\"information\","
              + "\"code\":\"informational\"}]}",
          "{\"resourceType\":\"Encounter\",\"id\":\"e\",\"status\":\"finished\","
              + "\"class\":{\"code\":\"AMB\"}}",
          "{\"resourceType\":\"Practitioner\",\"id\":\"p\",\"active\":true}");

  private final Random random = new Random(SEED);
  private final ExamSampler sampler = new ExamSampler(Catalogue.standard().all(), random);

  private static Raw.Obj raw(String json) {
    return (Raw.Obj) JSON.read(json).orThrow();
  }

  private static List<Raw.Obj> resources(Exam exam) {
    Raw.Obj bundle = raw(FhirWriter.of(BundleKind.COLLECTION).write(exam));
    return bundle.objects("entry").stream().map(e -> e.object("resource").orElseThrow()).toList();
  }

  /** Resources as a server keeps them: with ids of its own, to which all references lead. */
  private static List<Raw.Obj> stored(Exam exam, String prefix) {
    Map<String, String> names = new LinkedHashMap<>();
    List<Raw.Obj> resources = resources(exam);
    for (Raw.Obj resource : resources) {
      String id = prefix + names.size();
      names.put(
          "urn:uuid:" + resource.string("id").orElseThrow(), Neighbours.type(resource) + "/" + id);
    }
    List<Raw.Obj> stored = new ArrayList<>();
    for (Raw.Obj resource : resources) {
      String json = RawJson.write(resource);
      for (Map.Entry<String, String> name : names.entrySet()) {
        json = json.replace(name.getKey(), name.getValue());
      }
      stored.add(raw(json).with("id", Raw.of(prefix + stored.size())));
    }
    return stored;
  }

  private static Raw.Obj entry(Raw.Obj resource, String more) {
    String id = resource.string("id").orElse("");
    String name = Neighbours.type(resource) + "/" + id;
    Raw.Obj entry = raw(more.replace("NAME", name)).with("resource", resource);
    return id.isEmpty() ? entry : entry.with("fullUrl", Raw.of(SERVER + name));
  }

  private static Raw.Obj bundle(String type, List<? extends Raw> entries) {
    return raw("{\"resourceType\":\"Bundle\",\"type\":\"" + type + "\",\"id\":\"b\"}")
        .with("entry", Raw.of(List.copyOf(entries)));
  }

  private static void assertRead(List<Exam> wanted, Reading reading) {
    List<Exam> read = reading.exams().stream().map(ReadExam::exam).toList();
    assertEquals(new HashSet<>(wanted), new HashSet<>(read), () -> "seed " + SEED);
    int all = wanted.stream().mapToInt(exam -> resources(exam).size()).sum();
    assertEquals(all, reading.count("exact"), () -> "seed " + SEED);
  }

  @Test
  void readsAHistory() {
    String how =
        "{\"request\":{\"method\":\"PUT\",\"url\":\"NAME\"},\"response\":{\"status\":\"200\","
            + "\"etag\":\"W/1\",\"lastModified\":\"2026-03-05T00:00:00Z\"}}";
    for (int i = 0; i < EXAMS; i++) {
      Exam exam = sampler.next();
      List<Raw.Obj> entries =
          new ArrayList<>(stored(exam, "h").stream().map(r -> entry(r, how)).toList());
      Collections.shuffle(entries, random);
      assertRead(List.of(exam), READER.read(RawJson.write(bundle("history", entries))).orThrow());
    }
  }

  @Test
  void readsAnExportOfOneResourceALine() {
    for (int i = 0; i < EXAMS; i++) {
      Exam exam = sampler.next();
      List<Raw> lines = new ArrayList<>(stored(exam, "x"));
      Collections.shuffle(lines, random);
      assertRead(List.of(exam), READER.readTogether(lines));
    }
  }

  @Test
  void readsAPageOfManyRecordsWithGuests() {
    for (int i = 0; i < EXAMS / 4; i++) {
      List<Exam> exams = new ArrayList<>();
      List<Raw> entries = new ArrayList<>();
      for (int k = 0; k < 4; k++) {
        Exam exam = sampler.next();
        exams.add(exam);
        stored(exam, "r" + k + "-")
            .forEach(r -> entries.add(entry(r, "{\"search\":{\"mode\":\"match\"}}")));
      }
      GUESTS.forEach(g -> entries.add(entry(raw(g), "{\"search\":{\"mode\":\"include\"}}")));
      Collections.shuffle(entries, random);
      assertRead(exams, READER.read(RawJson.write(bundle("searchset", entries))).orThrow());
    }
  }
}
