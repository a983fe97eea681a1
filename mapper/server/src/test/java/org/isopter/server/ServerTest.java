package org.isopter.server;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.Random;
import java.util.TreeMap;
import java.util.stream.Collectors;
import org.isopter.mapper.exchange.Sender;
import org.isopter.mapper.fhir.BundleKind;
import org.isopter.mapper.fhir.FhirWriter;
import org.isopter.mapper.foreign.ForeignReader;
import org.isopter.mapper.foreign.reading.Options;
import org.isopter.mapper.foreign.reading.ReadExam;
import org.isopter.mapper.foreign.reading.Reading;
import org.isopter.mapper.json.Limits;
import org.isopter.mapper.json.Raw;
import org.isopter.mapper.json.RawJson;
import org.isopter.model.catalogue.Catalogue;
import org.isopter.model.exam.Exam;
import org.isopter.model.exam.ExamSampler;
import org.isopter.model.exam.Identifier;
import org.isopter.model.value.Result;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.MethodOrderer;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.TestMethodOrder;
import org.junit.jupiter.api.io.TempDir;

/**
 * Records that are sent to a FHIR server come back as they were, whatever way they are asked for.
 * The ways are those of FHIR R4: "RESTful API", "Search", "Operation Patient/$everything", and of
 * the bulk data export; the server is HAPI FHIR's.
 */
@TestMethodOrder(MethodOrderer.MethodName.class)
class ServerTest {

  private static final long SEED = Long.getLong("seed", 20261127L);
  private static final int SAMPLED = Integer.getInteger("server.exams", 8);
  private static final FhirWriter WRITER =
      FhirWriter.of(BundleKind.TRANSACTION).referringToPatients();
  private static final ForeignReader READER =
      new ForeignReader(Catalogue.standard(), Options.usual());
  private static final RawJson JSON = new RawJson(Limits.USUAL);

  private static final Map<String, Exam> EXAMS = new TreeMap<>();
  private static final Map<Identifier, String> PATIENTS = new java.util.LinkedHashMap<>();
  private static FhirServer server;
  private static int resources;

  @BeforeAll
  static void sendsAllExaminations() {
    server = FhirServer.start();
    DemoRecords.all().forEach(exam -> EXAMS.put(name(exam), exam));
    ExamSampler sampler = new ExamSampler(Catalogue.standard().all(), new Random(SEED));
    while (EXAMS.size() < DemoRecords.all().size() + SAMPLED) {
      Exam exam = sampler.next();
      EXAMS.put(name(exam), exam);
    }
    for (Exam exam : EXAMS.values()) {
      exam.header().subject().identifier().ifPresent(ServerTest::patient);
    }
    for (Exam exam : EXAMS.values()) {
      List<String> answers = server.transaction(WRITER.write(exam));
      resources += answers.size();
      answers.forEach(status -> assertTrue(status.startsWith("201"), status));
    }
  }

  @AfterAll
  static void stops() {
    server.close();
  }

  private static String name(Exam exam) {
    return exam.header().id().toString();
  }

  private static void patient(Identifier identifier) {
    PATIENTS.computeIfAbsent(
        identifier,
        who -> {
          String id = "person-" + PATIENTS.size();
          String system = who.system().map(uri -> "\"system\":\"" + uri + "\",").orElse("");
          server.put(
              "/Patient/" + id,
              "{\"resourceType\":\"Patient\",\"id\":\"%s\",\"identifier\":[{%s\"value\":\"%s\"}]}"
                  .formatted(id, system, who.value()));
          return id;
        });
  }

  private static List<Exam> of(Identifier identifier) {
    return EXAMS.values().stream()
        .filter(exam -> exam.header().subject().identifier().equals(Optional.of(identifier)))
        .toList();
  }

  private static Reading read(List<String> documents) {
    List<Raw> parsed = documents.stream().map(text -> JSON.read(text).orThrow()).toList();
    return READER.readTogether(parsed);
  }

  /** Returns the examinations read that have the identifier of one. */
  private static List<Exam> named(Exam exam, List<String> documents) {
    return read(documents).exams().stream()
        .map(ReadExam::exam)
        .filter(one -> one.header().id().equals(exam.header().id()))
        .toList();
  }

  private static void assertSame(List<Exam> wanted, List<String> documents) {
    Reading reading = read(documents);
    List<Exam> read =
        reading.exams().stream()
            .map(ReadExam::exam)
            .sorted(Comparator.comparing(ServerTest::name))
            .toList();
    assertEquals(wanted, read, () -> "seed " + SEED);
    assertEquals(0, reading.count("translated"), () -> "seed " + SEED);
  }

  @Test
  void answersASecondSendingWithNothingNew() {
    int before = server.versions();
    assertEquals(resources + PATIENTS.size(), before);
    for (Exam exam : EXAMS.values()) {
      server.transaction(WRITER.write(exam)).forEach(s -> assertTrue(s.startsWith("200"), s));
    }
    assertEquals(before, server.versions());
  }

  @Test
  void givesEachPersonsExaminationsInPages() {
    PATIENTS.forEach(
        (identifier, id) ->
            assertSame(
                of(identifier), server.pages("/Observation?_count=7&subject=Patient/" + id)));
  }

  /** What is included with one page matches on another: the same resource comes several times. */
  @Test
  void givesEachPersonsExaminationsWithAllThatTheyReferTo() {
    for (Exam exam : DemoRecords.all().subList(0, 10)) {
      Identifier who = exam.header().subject().identifier().orElseThrow();
      String token = who.system().orElse("") + "%7C" + who.value();
      assertSame(
          of(who), server.pages("/Observation?_count=20&_include=*&patient.identifier=" + token));
    }
  }

  @Test
  void givesEverythingOfAPerson() {
    PATIENTS.forEach(
        (identifier, id) ->
            assertSame(of(identifier), server.pages("/Patient/" + id + "/$everything?_count=30")));
  }

  @Test
  void givesAllExaminationsInPagesOfAnySize() {
    for (int size : List.of(13, 100)) {
      List<String> all = new ArrayList<>(server.pages("/Observation?_count=" + size));
      all.addAll(server.pages("/DiagnosticReport?_count=" + size));
      assertSame(List.copyOf(EXAMS.values()), all);
    }
  }

  @Test
  void givesTheHistory() {
    List<String> all = new ArrayList<>(server.pages("/Observation/_history?_count=50"));
    all.addAll(server.pages("/Provenance/_history?_count=50"));
    assertSame(List.copyOf(EXAMS.values()), all);
  }

  @Test
  void givesAnExportInLines() {
    List<String> lines =
        server.export("Observation,DiagnosticReport,Provenance").stream()
            .flatMap(String::lines)
            .toList();
    assertSame(List.copyOf(EXAMS.values()), lines);
  }

  /**
   * What a later version of a record no longer holds stays on the server, and out of the record.
   */
  @Test
  void readsNoFactThatALaterVersionTookBack() {
    Exam exam = DemoRecords.all().get(1);
    Exam shorter = new Exam(exam.header(), exam.facts().subList(0, exam.facts().size() - 2));
    String id =
        Objects.requireNonNull(PATIENTS.get(exam.header().subject().identifier().orElseThrow()));
    server.transaction(WRITER.write(shorter));
    List<Exam> found = named(exam, server.pages("/Observation?_count=20&subject=Patient/" + id));
    List<Exam> history = named(exam, server.pages("/_history?_count=100"));
    server.transaction(WRITER.write(exam));
    assertEquals(List.of(shorter), found);
    assertEquals(List.of(shorter), history);
  }

  @Test
  void keepsWhatIsReadBackAndSentAgain() {
    int before = server.versions();
    List<Exam> read =
        read(server.pages("/Observation?_count=100")).exams().stream().map(ReadExam::exam).toList();
    for (Exam exam : read) {
      server.transaction(WRITER.write(exam)).forEach(s -> assertTrue(s.startsWith("200"), s));
    }
    assertEquals(
        before,
        server.versions(),
        () -> "of " + read.stream().map(ServerTest::name).collect(Collectors.joining(", ")));
  }

  @Test
  void fetchesAllExaminations() {
    List<String> pages = new ArrayList<>(server.exchange().fetch("Observation?_count=60"));
    pages.addAll(server.exchange().fetch("DiagnosticReport?_count=60"));
    assertSame(List.copyOf(EXAMS.values()), pages);
    assertSame(
        List.copyOf(EXAMS.values()),
        server.fetchExport("$export?_type=Observation,DiagnosticReport,Provenance"));
    String last = List.copyOf(PATIENTS.values()).get(PATIENTS.size() - 1);
    Identifier whose = List.copyOf(PATIENTS.keySet()).get(PATIENTS.size() - 1);
    assertSame(of(whose), server.exchange().fetch("Patient/" + last + "/$everything?_count=30"));
  }

  /** Whole and in parts, of which the later ones refer to the places of the earlier. */
  @Test
  void sendsNothingNewOfWhatTheServerHas(@TempDir Path folder) {
    int before = server.versions();
    for (Exam exam : DemoRecords.all().subList(0, 4)) {
      for (int size : List.of(1 << 20, 9000)) {
        Path journal = folder.resolve("sent-" + size);
        Sender.Sent sent = server.exchange().send(journal, WRITER.write(exam), size).orThrow();
        assertEquals(0, sent.created(), name(exam));
      }
    }
    assertEquals(before, server.versions());
  }

  @Test
  void sendsAnAmendedRecordOverItsOwnVersionAlone(@TempDir Path folder) {
    Path journal = folder.resolve("sent");
    Exchange exchange = server.exchange();
    Exam exam = DemoRecords.all().get(2);
    int most = exam.facts().size();
    String whole = WRITER.write(exam);
    String amended = WRITER.write(new Exam(exam.header(), exam.facts().subList(0, most - 1)));
    String later = WRITER.write(new Exam(exam.header(), exam.facts().subList(0, most - 2)));
    exchange.send(journal, whole, Sender.USUAL_SIZE).orThrow();
    int before = server.versions();
    exchange.send(journal, amended, Sender.USUAL_SIZE).orThrow();
    assertTrue(server.versions() > before);
    server.transaction(whole);
    int changed = server.versions();
    Result<Sender.Sent> refused = exchange.send(journal, later, Sender.USUAL_SIZE);
    assertTrue(refused.faults().get(0).seen().contains("changed on the server"), refused::toString);
    assertEquals(changed, server.versions());
  }
}
