package org.isopter.mapper.table;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;

import java.util.ArrayList;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Random;
import java.util.Set;
import java.util.TreeMap;
import java.util.TreeSet;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import org.hl7.fhir.r5.context.IWorkerContext;
import org.hl7.fhir.r5.model.Base;
import org.hl7.fhir.utilities.json.model.JsonObject;
import org.isopter.mapper.check.RecordFiles;
import org.isopter.mapper.view.Definitions;
import org.isopter.mapper.view.Observations;
import org.isopter.mapper.view.ViewEngine;
import org.isopter.mapper.view.ViewTrials;
import org.isopter.model.catalogue.Catalogue;
import org.isopter.model.exam.Exam;
import org.isopter.model.exam.ExamSampler;
import org.isopter.model.finding.Finding;
import org.isopter.profiles.artefact.view.View;
import org.junit.jupiter.api.DynamicTest;
import org.junit.jupiter.api.TestFactory;

/**
 * The views, run by an engine that knows nothing of this project over the bundles we write, give
 * the rows of the long table: every finding, in R4 and in R5.
 */
class ViewRowsTest {

  private static final long SEED = Long.getLong("seed", 43L);

  /** A literal reference to a person is what a server may add; we write an identifier. */
  private static final Set<String> NEVER_FILLED = Set.of("subject_key");

  /** Facts of each finding that are shown to the engine in any case. */
  private static final int LEAST = 4;

  private static final String KEY = "observation_key";

  @TestFactory
  Stream<DynamicTest> inR4AreThoseOfTheTableAndFillEveryColumn() {
    return forEachView(Definitions.r4(), exams(24 * 2), true);
  }

  @TestFactory
  Stream<DynamicTest> inR5AreThoseOfTheTable() {
    return forEachView(Definitions.r5(), exams(LEAST), false);
  }

  private static Stream<DynamicTest> forEachView(
      IWorkerContext release, List<Exam> exams, boolean full) {
    ViewEngine engine = new ViewEngine(release);
    return View.of(Catalogue.standard()).stream()
        .map(
            view ->
                DynamicTest.dynamicTest(
                    view.id(), () -> check(engine, view, shown(view, exams), full)));
  }

  /** Returns the examinations with the finding of a view, and some that the view must pass over. */
  private static List<Exam> shown(View view, List<Exam> exams) {
    return IntStream.range(0, exams.size())
        .filter(at -> at % 97 == 0 || has(exams.get(at), view.id()))
        .mapToObj(exams::get)
        .toList();
  }

  private static boolean has(Exam exam, String finding) {
    return exam.facts().stream().anyMatch(fact -> fact.finding().id().equals(finding));
  }

  private static void check(ViewEngine engine, View view, List<Exam> exams, boolean full) {
    List<String> texts = exams.stream().flatMap(exam -> Observations.of(exam).stream()).toList();
    List<Base> observations = texts.stream().map(ViewEngine::resource).toList();
    JsonObject definition = ViewEngine.view(view.json());
    List<Map<String, String>> rows = engine.rows(definition, observations);
    assertFalse(rows.isEmpty());
    List<Map<String, String>> wanted = wanted(view.id(), exams);
    assertEquals(wanted, rows.stream().map(ViewRowsTest::plain).toList(), "seed " + SEED);
    long keys = rows.stream().map(row -> row.get(KEY)).distinct().count();
    assertEquals(rows.size(), keys, "one key for each observation");
    if (full) {
      ViewTrials.put(view.id(), view.json(), texts, wanted);
      Set<String> filled = new TreeSet<>(NEVER_FILLED);
      rows.forEach(row -> filled.addAll(row.keySet()));
      assertEquals(columns(definition), filled, "columns that some row fills, seed " + SEED);
    }
  }

  /** Returns the cells without the key, which is the engine's. */
  private static Map<String, String> plain(Map<String, String> row) {
    Map<String, String> cells = new TreeMap<>();
    row.forEach((column, cell) -> cells.put(column, ViewCells.plain(column, cell)));
    cells.remove(KEY);
    return cells;
  }

  private static Set<String> columns(JsonObject view) {
    Set<String> names = new TreeSet<>();
    for (JsonObject select : view.getJsonObjects("select")) {
      select.getJsonObjects("column").forEach(column -> names.add(column.asString("name")));
    }
    return names;
  }

  private static List<Map<String, String>> wanted(String finding, List<Exam> exams) {
    List<Map<String, String>> wanted = new ArrayList<>();
    for (Exam exam : exams) {
      Map<String, List<FindingRow>> byFact = new LinkedHashMap<>();
      for (FindingRow row : FindingRows.of(Pooled.of(exam))) {
        if (row.seen() && row.finding().equals(finding)) {
          byFact.computeIfAbsent(row.fact(), any -> new ArrayList<>()).add(row);
        }
      }
      byFact.values().forEach(rows -> wanted.add(ViewCells.of(rows)));
    }
    return wanted;
  }

  /**
   * Returns the records of the documentation, and random ones of each finding: some as they come,
   * and of so many more those that fill a column that none before filled.
   */
  private static List<Exam> exams(int each) {
    List<Exam> exams = new ArrayList<>();
    RecordFiles.in(RecordFiles.DEMO).forEach(file -> exams.add(RecordFiles.exam(file)));
    Random random = new Random(SEED);
    for (Finding<?> finding : Catalogue.standard().all()) {
      ExamSampler sampler = new ExamSampler(List.of(finding), random);
      Set<String> filled = new HashSet<>();
      for (int facts = 0; facts < each * weight(finding); ) {
        Exam exam = sampler.next();
        boolean more = false;
        for (Map<String, String> row : wanted(finding.id(), List.of(exam))) {
          more |= filled.addAll(row.keySet());
        }
        if (more || facts < LEAST) {
          exams.add(exam);
        }
        facts += exam.facts().size();
      }
    }
    return exams;
  }

  /** What has many parts must be seen more often until each part was absent once. */
  private static int weight(Finding<?> finding) {
    return 1 + finding.layout().commonParts().size() / 2;
  }
}
