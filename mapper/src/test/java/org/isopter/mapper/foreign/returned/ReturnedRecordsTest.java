package org.isopter.mapper.foreign.returned;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Random;
import java.util.function.BiFunction;
import org.isopter.mapper.fhir.BundleKind;
import org.isopter.mapper.fhir.FhirWriter;
import org.isopter.mapper.foreign.ForeignReader;
import org.isopter.mapper.foreign.document.Neighbours;
import org.isopter.mapper.foreign.reading.Options;
import org.isopter.mapper.foreign.reading.Reading;
import org.isopter.mapper.foreign.reading.ResourceOutcome;
import org.isopter.mapper.json.Limits;
import org.isopter.mapper.json.Raw;
import org.isopter.mapper.json.RawJson;
import org.isopter.model.catalogue.Catalogue;
import org.isopter.model.exam.Exam;
import org.isopter.model.exam.ExamSampler;
import org.isopter.model.exam.Fact;
import org.isopter.model.exam.Status;
import org.junit.jupiter.api.Test;

/** What was written here reads exact, whatever a server or an export makes of it. */
class ReturnedRecordsTest {

  private static final long SEED = Long.getLong("seed", 20261127L);
  private static final int EXAMS = Integer.getInteger("own.exams", 150);
  private static final ForeignReader READER =
      new ForeignReader(Catalogue.standard(), Options.usual());
  private static final RawJson JSON = new RawJson(Limits.USUAL);
  private static final String SERVER = "https://server.example/fhir/";

  private static Raw.Obj raw(String json) {
    return (Raw.Obj) JSON.read(json).orThrow();
  }

  private static List<Raw.Obj> resources(Exam exam) {
    Raw.Obj bundle = raw(FhirWriter.of(BundleKind.COLLECTION).write(exam));
    return bundle.objects("entry").stream().map(e -> e.object("resource").orElseThrow()).toList();
  }

  private static void each(BiFunction<Random, Exam, Void> check) {
    Random random = new Random(SEED);
    ExamSampler sampler = new ExamSampler(Catalogue.standard().all(), random);
    for (int i = 0; i < EXAMS; i++) {
      check.apply(random, sampler.next());
    }
  }

  @Test
  void readsAnObservationAlone() {
    each(
        (random, exam) -> {
          if (exam.header().status() != Status.AMENDED) {
            List<Raw.Obj> all = resources(exam);
            all.stream()
                .filter(r -> Neighbours.type(r).equals("Observation") && !ReturnedBundle.isPanel(r))
                .forEach(observation -> alone(exam, observation));
          }
          return null;
        });
  }

  private static void alone(Exam exam, Raw.Obj observation) {
    String json = RawJson.write(observation);
    Reading reading = READER.read(json).orThrow();
    assertEquals(1, reading.count("exact"), () -> SEED + ": " + json + reading.resources());
    Exam read = reading.exams().get(0).exam();
    assertEquals(exam.header().id(), read.header().id());
    assertEquals(exam.header().subject(), read.header().subject());
    Fact<?> fact = read.facts().get(0);
    boolean same =
        exam.facts().stream()
            .anyMatch(
                one ->
                    one.withoutTime().equals(fact.withoutTime())
                        && one.at()
                            .orElse(exam.header().performed())
                            .isEqual(fact.at().orElse(read.header().performed())));
    assertTrue(same, () -> SEED + ": " + json + " became " + fact);
  }

  @Test
  void readsWhatASearchReturns() {
    each(
        (random, exam) -> {
          Reading reading = READER.read(RawJson.write(page(exam, random, true))).orThrow();
          assertEquals(1, reading.exams().size(), () -> SEED + ": " + exam);
          assertEquals(exam, reading.exams().get(0).exam());
          assertEquals(resources(exam).size(), reading.count("exact"));
          return null;
        });
  }

  /** A foreign component may change its meaning: that one is left to the rules, and no other. */
  @Test
  void leavesTheOthersExactWhereOneWasChanged() {
    each(
        (random, exam) -> {
          Raw.Obj all = page(exam, random, false);
          List<Raw.Obj> entries = new ArrayList<>(all.objects("entry"));
          int changed = -1;
          for (int i = 0; i < entries.size(); i++) {
            changed = isFact(entries.get(i).object("resource").orElseThrow()) ? i : changed;
          }
          if (changed >= 0 && exam.facts().size() > 1) {
            Raw.Obj entry = entries.get(changed);
            Raw.Obj other =
                entry.object("resource").orElseThrow().with("valueString", Raw.of("perhaps"));
            entries.set(changed, entry.with("resource", other));
            Reading reading =
                READER.read(RawJson.write(all.with("entry", Raw.of(entries)))).orThrow();
            Exam read = reading.exams().get(0).exam();
            assertEquals(exam.header(), read.header(), () -> SEED + ": " + exam);
            assertEquals(exam.facts().size() - 1, read.facts().size(), () -> SEED + ": " + exam);
            assertTrue(
                exam.facts().containsAll(read.facts()), () -> SEED + ": " + exam + read.facts());
          }
          return null;
        });
  }

  private static boolean isFact(Raw.Obj resource) {
    return WrittenName.of(resource).filter(name -> WrittenName.isFact(name.key())).isPresent();
  }

  @Test
  void keepsWhatTheServerAdded() {
    Exam exam = new ExamSampler(Catalogue.standard().all(), new Random(SEED)).next();
    Reading reading = READER.read(RawJson.write(page(exam, new Random(SEED), true))).orThrow();
    String carried = reading.exams().get(0).carried().toJson();
    for (String added : List.of("Patient/7", "local-copy", "issued", "total", "mine")) {
      assertTrue(carried.contains(added), added + " is not in " + carried);
    }
  }

  @Test
  void readsPagesTogether() {
    each(
        (random, exam) -> {
          Raw.Obj all = page(exam, random, false);
          List<Raw.Obj> entries = new ArrayList<>(all.objects("entry"));
          int half = entries.size() / 2;
          List<Raw> pages =
              List.of(
                  all.with("entry", Raw.of(entries.subList(0, half))),
                  all.with("entry", Raw.of(entries.subList(half, entries.size()))));
          Reading reading = READER.readTogether(pages);
          assertEquals(1, reading.exams().size(), () -> SEED + ": " + exam);
          assertEquals(exam, reading.exams().get(0).exam());
          return null;
        });
  }

  @Test
  void refusesACodeBesideOursThatNamesTheOtherEye() {
    Exam exam = new ExamSampler(Catalogue.standard().all(), new Random(SEED)).next();
    String json =
        RawJson.write(page(exam, new Random(SEED), false))
            .replace("\"bodySite\":{\"coding\":[", "\"bodySite\":{\"coding\":[" + OTHER_EYE + ",");
    Reading reading = READER.read(json).orThrow();
    assertTrue(
        reading.resources().stream()
            .filter(read -> RawJson.write(read.resource()).contains("\"bodySite\""))
            .noneMatch(read -> read.outcome() instanceof ResourceOutcome.Exact),
        json);
  }

  private static final String OTHER_EYE =
      "{\"system\":\"http://snomed.info/sct\",\"code\":\"7771000\",\"display\":\"Left\"}";

  /** A page of a search: in any order, with what servers add. */
  private static Raw.Obj page(Exam exam, Random random, boolean shuffled) {
    List<Raw.Obj> resources = new ArrayList<>(resources(exam));
    Map<String, String> ids = new LinkedHashMap<>();
    for (Raw.Obj resource : resources) {
      String id = resource.string("id").orElseThrow();
      ids.put("urn:uuid:" + id, Neighbours.type(resource) + "/" + ids.size());
    }
    List<Raw> entries = new ArrayList<>();
    int number = 0;
    for (Raw.Obj resource : resources) {
      String json = RawJson.write(resource);
      for (Map.Entry<String, String> id : ids.entrySet()) {
        json = json.replace(id.getKey(), id.getValue());
      }
      entries.add(entry(raw(json), number++));
    }
    if (shuffled) {
      Collections.shuffle(entries, random);
    }
    entries.add(
        raw(
            "{\"fullUrl\":\""
                + SERVER
                + "Patient/7\",\"resource\":{\"resourceType\":\"Patient\",\"id\":\"7\"},"
                + "\"search\":{\"mode\":\"include\"}}"));
    Map<String, Raw> bundle = new LinkedHashMap<>();
    bundle.put("resourceType", Raw.of("Bundle"));
    bundle.put("id", Raw.of("page-1"));
    bundle.put("type", Raw.of("searchset"));
    bundle.put("total", new Raw.Leaf(Raw.Kind.NUMBER, "" + entries.size()));
    bundle.put("link", Raw.of(List.of(raw("{\"relation\":\"self\",\"url\":\"" + SERVER + "x\"}"))));
    bundle.put("entry", Raw.of(entries));
    return new Raw.Obj(bundle);
  }

  private static Raw.Obj entry(Raw.Obj resource, int number) {
    String type = Neighbours.type(resource);
    Raw.Obj stored =
        resource
            .with("id", Raw.of("" + number))
            .with(
                "meta",
                raw(
                    "{\"versionId\":\"3\",\"lastUpdated\":\"2026-03-05T00:00:00Z\","
                        + "\"tag\":[{\"system\":\"https://server.example/tags\",\"code\":\"mine\"}]}"));
    if (type.equals("Observation")) {
      stored = observation(stored);
    }
    return new Raw.Obj(
        new LinkedHashMap<>(
            Map.of(
                "fullUrl",
                Raw.of(SERVER + type + "/" + number),
                "resource",
                stored,
                "search",
                raw("{\"mode\":\"match\"}"))));
  }

  private static Raw.Obj observation(Raw.Obj stored) {
    String more =
        RawJson.write(stored.with("issued", Raw.of("2026-03-05T00:00:00Z")))
            .replace("\"subject\":{", "\"subject\":{\"reference\":\"Patient/7\",")
            .replace(" (observable entity)\"", "\"")
            .replace(
                "\"code\":{\"coding\":[",
                "\"code\":{\"coding\":[{\"system\":\"https://server.example/codes\",\"code\":\"k\"},");
    Raw.Obj observation = raw(more);
    List<Raw> identifiers = new ArrayList<>(observation.list("identifier"));
    identifiers.add(raw("{\"system\":\"https://server.example/ids\",\"value\":\"local-copy\"}"));
    return observation.with("identifier", Raw.of(identifiers));
  }
}
