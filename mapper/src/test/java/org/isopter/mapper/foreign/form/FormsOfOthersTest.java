package org.isopter.mapper.foreign.form;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.io.InputStream;
import java.util.ArrayList;
import java.util.Collection;
import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeSet;
import java.util.stream.Stream;
import org.isopter.mapper.fhir.BundleKind;
import org.isopter.mapper.foreign.ForeignReader;
import org.isopter.mapper.foreign.ForeignWriter;
import org.isopter.mapper.foreign.reading.Options;
import org.isopter.mapper.foreign.reading.ReadExam;
import org.isopter.mapper.foreign.reading.Reading;
import org.isopter.mapper.foreign.reading.ResourceOutcome;
import org.isopter.mapper.json.Limits;
import org.isopter.mapper.json.Raw;
import org.isopter.mapper.json.RawJson;
import org.isopter.mapper.record.PlainJson;
import org.isopter.mapper.record.RecordTree;
import org.isopter.model.catalogue.Catalogue;
import org.junit.jupiter.api.DynamicTest;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.TestFactory;

/**
 * Answers to forms of others (FHIR R4 Questionnaire and QuestionnaireResponse). The forms are
 * invented; what each case reads was printed, read over and judged.
 */
final class FormsOfOthersTest {

  private static final String REMARK = "Time of issue; that of the test is not stated.";

  private final ForeignReader reader = new ForeignReader(Catalogue.standard(), Options.usual());

  private static List<Raw> cases() throws IOException {
    try (InputStream in =
        FormsOfOthersTest.class.getResourceAsStream("/foreign/forms-of-others.json")) {
      Raw all = new RawJson(Limits.USUAL).read(in.readAllBytes()).orThrow();
      return ((Raw.Arr) all).items();
    }
  }

  @TestFactory
  Stream<DynamicTest> eachCaseReadsWhatItSays() throws IOException {
    return cases().stream()
        .map(one -> DynamicTest.dynamicTest(one.string("case").orElseThrow(), () -> check(one)));
  }

  private void check(Raw one) {
    Raw document = one.object("document").orElseThrow();
    Reading reading = reader.read(document);
    Raw expected = one.object("reads").orElseThrow();
    assertEquals(RawJson.write(expected), findings(reading));
    Set<String> kept = new TreeSet<>();
    reading.resources().stream()
        .map(read -> read.outcome())
        .filter(ResourceOutcome.Kept.class::isInstance)
        .flatMap(outcome -> ((ResourceOutcome.Kept) outcome).reasons().stream())
        .filter(reason -> !reason.isExpected())
        .forEach(reason -> kept.add(reason.word()));
    Set<String> keeps = new TreeSet<>();
    one.list("keeps").forEach(word -> keeps.add(word.string().orElseThrow()));
    assertEquals(keeps, kept);
    // The response itself goes along whole, and nothing that was made of it.
    for (ReadExam exam : reading.exams()) {
      assertTrue(exam.carried().leaves().isEmpty());
      exam.carried().resources().forEach(whole -> assertTrue(stands(document, whole.resource())));
    }
  }

  private static boolean stands(Raw document, Raw resource) {
    return document.equals(resource)
        || document.objects("entry").stream()
            .anyMatch(entry -> entry.get("resource").filter(resource::equals).isPresent());
  }

  private static String findings(Reading reading) {
    if (reading.exams().isEmpty()) {
      return "{}";
    }
    assertEquals(1, reading.exams().size());
    Object findings = RecordTree.of(reading.exams().get(0).exam()).get("findings");
    String plain = PlainJson.of(Map.of("findings", withoutTime(findings)));
    Raw json = new RawJson(Limits.USUAL).read(plain).orThrow();
    return RawJson.write(json.object("findings").orElseThrow());
  }

  /** Every time is that of the response, and says so. */
  private static Object withoutTime(Object value) {
    if (value instanceof Map<?, ?> map) {
      Map<Object, Object> rest = new LinkedHashMap<>();
      map.forEach((key, inner) -> rest.put(key, withoutTime(inner)));
      if (rest.remove("remarks") instanceof List<?> remarks) {
        assertEquals(List.of(REMARK), remarks);
      }
      return rest;
    }
    if (value instanceof Collection<?> list) {
      List<Object> all = new ArrayList<>();
      list.forEach(inner -> all.add(withoutTime(inner)));
      return all;
    }
    return value;
  }

  @Test
  void readsAgainWhatIsWrittenOfThem() throws IOException {
    int read = 0;
    for (Raw one : cases()) {
      for (ReadExam exam : reader.read(one.object("document").orElseThrow()).exams()) {
        String written = ForeignWriter.of(BundleKind.COLLECTION).write(exam);
        ReadExam again = reader.read(written).orThrow().exams().get(0);
        assertEquals(exam.exam(), again.exam());
        assertEquals(exam.carried(), again.carried());
        read++;
      }
    }
    assertTrue(read > 20, "documents that read: " + read);
  }

  @Test
  void findsTheQuestionsInAnotherFile() throws IOException {
    Raw bundle = cases().get(0).object("document").orElseThrow();
    List<Raw> files =
        bundle.objects("entry").stream().map(entry -> entry.get("resource").orElseThrow()).toList();
    assertEquals(findings(reader.read(bundle)), findings(reader.readTogether(files)));
  }

  @Test
  void keepsWhatHasTooManyAnswers() {
    String answer = "{\"linkId\":\"v\",\"answer\":[{\"valueString\":\"6/9\"}]}";
    String items = String.join(",", Collections.nCopies(401, answer));
    String form =
        "{\"resourceType\":\"Questionnaire\",\"id\":\"f\",\"item\":[{\"linkId\":\"v\",\"text\":\"VA OD\"}]}";
    String response =
        "{\"resourceType\":\"QuestionnaireResponse\",\"status\":\"completed\",\"questionnaire\":\"#f\","
            + "\"contained\":["
            + form
            + "],\"authored\":\"2026-03-02\",\"item\":["
            + items
            + "]}";
    Reading reading = reader.read(response).orThrow();
    assertEquals(List.of(), reading.exams());
    assertEquals(
        "[unreadable: /item: saw more answers, wanted at most 400 answers]",
        ((ResourceOutcome.Kept) reading.resources().get(0).outcome()).reasons().toString());
  }
}
