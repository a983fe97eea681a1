package org.isopter.mapper.pool;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.sql.SQLException;
import java.util.ArrayList;
import java.util.List;
import java.util.SplittableRandom;
import java.util.stream.Stream;
import org.isopter.mapper.fhir.BundleKind;
import org.isopter.mapper.fhir.FhirReader;
import org.isopter.mapper.fhir.FhirWriter;
import org.isopter.mapper.store.TableStore;
import org.isopter.model.catalogue.Catalogue;
import org.isopter.model.exam.Exam;
import org.isopter.model.exam.ExamSampler;
import org.isopter.model.value.FaultException;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** What goes in comes out or is accounted for, in every format alike. */
class PoolRunTest {

  private static final String BARE =
      """
      {"resourceType":"Observation","status":"final","subject":{"reference":"Patient/7"},\
      "effectiveDateTime":"2026-03-02T10:00:00Z","code":{"coding":[{"system":"http://snomed.info/sct",\
      "code":"41633001"}]},"bodySite":{"coding":[{"system":"http://snomed.info/sct",\
      "code":"362502000"}]},"valueQuantity":{"value":17,"unit":"mm Hg"}}""";

  private static final String PATIENT =
      """
      {"resourceType":"Patient","id":"7","birthDate":"1931-05-06","gender":"female"}""";

  @TempDir Path folder;

  @Test
  void everyFormatHoldsTheSame() throws IOException, SQLException {
    Path pool = folder.resolve("pool");
    PoolResult result = Pools.run(Pools.everything(pool, false, true), mixed(30));
    try (TableStore store = TableStore.at(pool.resolve("tables.duckdb"))) {
      for (String table : List.of("findings", "examinations")) {
        for (String file : List.of("parquet", "ndjson")) {
          String other = "'" + pool.resolve(table + "." + file) + "'";
          assertEquals(0, count(store, table + " EXCEPT ALL SELECT * FROM " + other), file);
          assertEquals(0, count(store, other + " EXCEPT ALL SELECT * FROM " + table), file);
        }
      }
      assertEquals(result.tables().findings(), count(store, "findings"));
      assertEquals(result.tables().eyes(), count(store, "examinations"));
    }
  }

  @Test
  void whatGoesInIsPooledOrLeftOver() throws IOException, SQLException {
    Path pool = folder.resolve("pool");
    List<PoolDocument> documents = mixed(40);
    documents.add(Pools.json("{\"isopter\": 1, \"record\": 7}", 41));
    documents.add(Pools.json("{\"resourceType\": ", 42));
    documents.add(Pools.json(BARE, 43));
    documents.add(Pools.json(PATIENT, 44));
    documents.add(Pools.json(BARE.replace("\"17\"", "").replace("mm Hg", "furlong"), 45));
    PoolResult result = Pools.run(Pools.everything(pool, false, false), documents);
    PoolCounts counts = result.counts();
    assertEquals(45, counts.documents());
    assertEquals(2, counts.refused());
    assertEquals(2, counts.kept());
    assertEquals(counts.resources(), counts.pooled() + counts.kept());
    List<String> left = Files.readAllLines(pool.resolve("leftover.ndjson"));
    assertEquals(
        List.of(
            "{\"what\":\"kept\",\"type\":\"Observation\"",
            "{\"what\":\"kept\",\"type\":\"Patient\"",
            "{\"what\":\"part\",\"type\":\"Observation\",\"reasons\":[],\"times\":1}",
            "{\"what\":\"refused\",\"type\":\"other\",\"reasons\":[\"refused\"],\"times\":2}"),
        left.stream().map(line -> line.replaceAll("(kept.*?),\"reasons.*", "$1")).toList());
    try (TableStore store = TableStore.at(pool.resolve("tables.duckdb"))) {
      assertEquals(
          1, count(store, "findings WHERE number = 17 AND unit = 'mm[Hg]' AND rules <> ''"));
      // Ninety-four years old is pooled with all from ninety on.
      assertEquals(2, count(store, "examinations WHERE age = 90 AND sex = 'female'"));
      assertEquals(1, count(store, "(SELECT DISTINCT subject FROM findings WHERE rules <> '')"));
    }
  }

  @Test
  void aFolderInUseIsRefusedAndAnInterruptedRunLeavesNothing() throws IOException {
    Path pool = folder.resolve("pool");
    PoolPlan plan = Pools.everything(pool, false, false);
    try (PoolRun run = PoolRun.begin(Catalogue.standard(), Pools.reader(), plan)) {
      run.add(Pools.json(BARE, 1));
    }
    try (Stream<Path> files = Files.list(folder)) {
      assertEquals(List.of(), files.toList());
    }
    Pools.run(plan, List.of(Pools.json(BARE, 1)));
    FaultException refused =
        assertThrows(FaultException.class, () -> Pools.run(plan, List.of(Pools.json(BARE, 1))));
    assertTrue(refused.getMessage().contains("a new or empty folder"), refused.getMessage());
  }

  @Test
  void bundlesOfThePoolAreLabelledAndReadAgain() throws IOException {
    Path pool = folder.resolve("pool");
    Pools.run(Pools.everything(pool, false, false), mixed(10));
    for (String line : Files.readAllLines(pool.resolve("bundles.ndjson"))) {
      assertTrue(line.contains("\"code\":\"PSEUDED\""), line);
      new FhirReader(Catalogue.standard()).read(line).orThrow();
    }
  }

  @Test
  void theCodebookNamesEveryColumnAndCountsIt() throws IOException, SQLException {
    Path pool = folder.resolve("pool");
    Pools.run(Pools.everything(pool, false, false), mixed(30));
    try (TableStore store = TableStore.at(pool.resolve("tables.duckdb"))) {
      String book = "'" + pool.resolve("codebook.csv") + "'";
      for (String table : List.of("findings", "examinations")) {
        long columns = count(store, "duckdb_columns() WHERE table_name = '" + table + "'");
        assertEquals(columns, count(store, book + " WHERE \"table\" = '" + table + "'"));
      }
      String filled =
          "(SELECT filled FROM "
              + book
              + " WHERE \"table\" = 'findings' AND \"column\" = 'number')";
      assertEquals(
          1, count(store, "(SELECT count(number) AS n FROM findings) WHERE n = " + filled));
      assertFalse(Files.readString(pool.resolve("codebook.md")).contains("null"));
    }
  }

  @Test
  void aTraitThatIsNoColumnIsRefused() {
    PoolPlan plan =
        PoolPlan.identified(folder.resolve("pool")).risk(5, List.of("shoe_size"), false);
    FaultException refused = assertThrows(FaultException.class, () -> Pools.run(plan, List.of()));
    assertTrue(refused.getMessage().contains("shoe_size"), refused.getMessage());
  }

  private static List<PoolDocument> mixed(int count) {
    ExamSampler exams = new ExamSampler(Catalogue.standard().all(), new SplittableRandom(11));
    FhirWriter bundles = FhirWriter.of(BundleKind.COLLECTION);
    List<PoolDocument> documents = new ArrayList<>();
    for (int i = 1; i <= count; i++) {
      Exam exam = exams.next();
      documents.add(i % 2 == 0 ? Pools.record(exam, i) : Pools.json(bundles.write(exam), i));
    }
    return documents;
  }

  private static long count(TableStore store, String from) throws SQLException {
    return (Long)
        store.ask("SELECT count(*) FROM (SELECT * FROM " + from + ")").get(0).get(0).orElseThrow();
  }
}
