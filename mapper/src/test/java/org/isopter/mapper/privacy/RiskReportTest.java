package org.isopter.mapper.privacy;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.sql.SQLException;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.isopter.mapper.pool.PoolDocument;
import org.isopter.mapper.pool.PoolPlan;
import org.isopter.mapper.pool.PoolResult;
import org.isopter.mapper.pool.Pools;
import org.isopter.mapper.store.PoolTables;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Groups of persons, counted by hand. */
class RiskReportTest {

  private static final String RECORD =
      """
      {"isopter":1,"record":{"id":"r-%s"},"subject":{"id":"p-%s"},\
      "performed":"2026-0%s-03T09:10:00Z","status":"final","setting":"%s","findings":{\
      "afferent-defect":{"both":{"value":"%s"}}}}""";

  private static final List<String> TRAITS = List.of("setting", "sex");

  @TempDir Path folder;

  /** Three persons were seen in the clinic, one of them twice, and one at the bedside. */
  private static List<PoolDocument> four() {
    return List.of(
        record("1", "1", 1, "clinic", "none"),
        record("2", "1", 5, "clinic", "right"),
        record("3", "2", 2, "clinic", "none"),
        record("4", "3", 9, "clinic", "none"),
        record("5", "4", 4, "bedside", "none"));
  }

  private static PoolDocument record(
      String id, String person, int month, String setting, String defect) {
    return Pools.json(RECORD.formatted(id, person, month, setting, defect), 1);
  }

  @Test
  void theSmallestGroupIsCountedByPersons() throws IOException {
    PoolResult result = run(2, false, four());
    assertEquals(1, result.risk().least());
    List<String> lines = Files.readAllLines(folder.resolve("pool/risk.csv"));
    assertTrue(lines.contains("k,setting,,1,2,4,1"), lines.toString());
    assertTrue(lines.contains("k,visits,,1,2,4,1"), lines.toString());
    assertTrue(lines.contains("l,setting sex,afferent-defect,1,2,4,1"), lines.toString());
  }

  @Test
  void whoSharesTraitsWithTooFewIsTakenOutWithAllRows() throws IOException, SQLException {
    PoolResult result = run(3, true, four());
    assertEquals(new Suppression.Taken(1, 1, 1), result.risk().taken());
    assertEquals(3, result.risk().least());
    // Four examinations, each with a row for either eye and one for both.
    assertEquals(new PoolResult.Tables(3, 4, rows("findings"), 12), result.tables());
    String provenance = Files.readString(folder.resolve("pool/provenance.json"));
    assertTrue(provenance.contains("3 persons with 4 examinations, "), provenance);
    assertTrue(provenance.contains(rows("findings") + " rows of findings and 12 of eyes;"));
    assertTrue(provenance.contains("1 persons with 1 examinations were taken out"), provenance);
    try (PoolTables tables = PoolTables.open(folder.resolve("pool"))) {
      for (String table : List.of("findings", "examinations")) {
        String sql =
            "SELECT count(DISTINCT subject), count(*) FILTER (WHERE setting = 'bedside') FROM ";
        assertEquals(
            List.of(Optional.of(3L), Optional.of(0L)), tables.ask(sql + table).cells().get(0));
      }
    }
  }

  @Test
  void whereNobodyIsAloneNobodyIsTakenOut() throws IOException {
    List<PoolDocument> alike = new ArrayList<>(four().subList(0, 4));
    PoolResult result = run(3, true, alike);
    assertEquals(new PoolResult.Risk(0, 3, 0, Suppression.Taken.NOTHING), result.risk());
  }

  /** All four were at the bedside and in the clinic, final here and preliminary there. */
  @Test
  void whatStandsInOneRowTellsAPersonApart() throws IOException {
    List<PoolDocument> visits = new ArrayList<>();
    for (int person = 1; person <= 4; person++) {
      boolean swapped = person == 1;
      visits.add(visit(person, person, "bedside", swapped ? "final" : "preliminary"));
      visits.add(visit(person, person + 1, "clinic", swapped ? "preliminary" : "final"));
    }
    Deidentifier deidentifier = new Deidentifier(Pools.KEY, false);
    PoolPlan plan = PoolPlan.of(folder.resolve("pool"), deidentifier);
    PoolResult result = Pools.run(plan.risk(3, List.of("setting", "status"), true), visits);
    assertEquals(1, result.risk().taken().persons());
    assertEquals(3, result.risk().least());
  }

  /**
   * Person 1 was seen in January and in May, and nothing in the pool is earlier or later: whoever
   * knows the first and the last day of the study knows both days, however far they were moved.
   */
  @Test
  void whoseVisitsFillThePeriodIsCountedAndTakenOut() throws IOException, SQLException {
    List<PoolDocument> year =
        List.of(
            record("1", "1", 1, "clinic", "none"),
            record("2", "1", 9, "clinic", "none"),
            record("3", "2", 2, "clinic", "none"),
            record("4", "2", 8, "clinic", "none"),
            record("5", "3", 3, "clinic", "none"));
    assertEquals(1, run(2, false, year).risk().filling());
    PoolPlan again = plan(2, true).replacing();
    PoolResult result = Pools.run(again, year);
    assertEquals(new Suppression.Taken(1, 2, 1), result.risk().taken());
    assertEquals(0, result.risk().filling());
    assertEquals(2, result.tables().persons());
  }

  /** Who is taken out for the days makes a group smaller, which is then looked at. */
  @Test
  void whoIsAloneOnceTheLongestCourseIsGoneIsTakenOutToo() throws IOException {
    List<PoolDocument> year =
        List.of(
            record("1", "1", 1, "bedside", "none"),
            record("2", "1", 9, "bedside", "none"),
            record("3", "2", 2, "bedside", "none"),
            record("4", "3", 3, "clinic", "none"),
            record("5", "4", 4, "clinic", "none"));
    PoolResult result = run(2, true, year);
    assertEquals(2, result.risk().taken().persons());
    assertEquals(2, result.risk().least());
  }

  @Test
  void theSiteAndTheGroupOfAPersonCountWhereTheyAreInThePool() throws IOException {
    Deidentifier deidentifier = new Deidentifier(Pools.KEY, false).at(Optional.of("north"));
    PoolPlan plan = PoolPlan.of(folder.resolve("pool"), deidentifier);
    Pools.run(plan.risk(2, TRAITS, false), four());
    String risk = Files.readString(folder.resolve("pool/risk.csv"));
    assertTrue(risk.contains("\nk,setting sex site,,1,2,4,1\n"), risk);
    assertTrue(risk.contains("\nk,setting sex site visits refraction,"), risk);
  }

  private static PoolDocument visit(int person, int month, String setting, String status) {
    String line = RECORD.formatted(person + "-" + month, person, month, setting, "none");
    return Pools.json(line.replace("\"final\"", "\"" + status + "\""), 1);
  }

  @Test
  void withoutAnyoneThereIsNoGroup() throws IOException {
    assertEquals(
        new PoolResult.Risk(0, 0, 0, Suppression.Taken.NOTHING), run(3, true, List.of()).risk());
  }

  private long rows(String table) throws SQLException {
    try (PoolTables tables = PoolTables.open(folder.resolve("pool"))) {
      return (Long) tables.ask("SELECT count(*) FROM " + table).cells().get(0).get(0).orElse(0L);
    }
  }

  private PoolResult run(int least, boolean suppress, List<PoolDocument> documents)
      throws IOException {
    return Pools.run(plan(least, suppress), documents);
  }

  private PoolPlan plan(int least, boolean suppress) {
    Deidentifier deidentifier = new Deidentifier(Pools.KEY, false);
    return PoolPlan.of(folder.resolve("pool"), deidentifier).risk(least, TRAITS, suppress);
  }
}
