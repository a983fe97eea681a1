package org.isopter.mapper.pool;

import static java.nio.charset.StandardCharsets.UTF_8;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.sql.SQLException;
import java.time.LocalDate;
import java.time.LocalDateTime;
import java.time.temporal.ChronoUnit;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.LongSummaryStatistics;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.function.ToLongFunction;
import java.util.stream.Stream;
import org.isopter.mapper.privacy.Deidentifier;
import org.isopter.mapper.privacy.Guesses;
import org.isopter.mapper.record.RecordWriter;
import org.isopter.mapper.store.PoolTables;
import org.isopter.model.exam.Exam;
import org.isopter.model.simulate.Cohort;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/**
 * An attacker who has the pool and knows the first and the last day of the study, and that the
 * input was sorted by day in files of a clinic, finds no day within a week better than by chance.
 */
class AttackTest {

  private static final int WEEK = 7;
  private static final String MARK = "ward-7-on-";
  private static final int PERSONS = 400;

  @TempDir static Path folder = Path.of("");

  private static final Map<String, LocalDate> TRUTH = new HashMap<>();
  private static List<Row> rows = List.of();
  private static LongSummaryStatistics study = new LongSummaryStatistics();

  /** A row of the wide table, as the attacker sees it. */
  private record Row(String subject, String examination, LocalDateTime time) {}

  @BeforeAll
  static void poolASortedInput() throws IOException, SQLException {
    Deidentifier deidentifier = new Deidentifier(Pools.KEY, false);
    List<Exam> exams =
        new Cohort(PERSONS, 31)
            .exams()
            .sorted(Comparator.comparing((Exam exam) -> exam.header().performed().toInstant()))
            .toList();
    List<PoolDocument> documents = new ArrayList<>();
    for (Exam exam : exams) {
      documents.add(named(exam));
      TRUTH.put(
          deidentifier.examination(exam.header().id()).toString(),
          exam.header().performed().toLocalDate());
    }
    documents.add(named("{\"isopter\": 1, ", exams.get(0)));
    Path pool = folder.resolve("pool");
    Pools.run(PoolPlan.of(pool, deidentifier), documents);
    rows = seen(pool);
    study = TRUTH.values().stream().mapToLong(LocalDate::toEpochDay).summaryStatistics();
  }

  /** A clinic names its files by day and person, and keeps those of a day in a folder. */
  private static PoolDocument named(Exam exam) {
    return named(new RecordWriter().line(exam), exam);
  }

  private static PoolDocument named(String text, Exam exam) {
    String day = MARK + exam.header().performed().toLocalDate();
    String name = day + "/" + exam.header().subject().identifier().orElseThrow().value();
    return new PoolDocument(name, 0, day, PoolDocument.Form.JSON, text.getBytes(UTF_8));
  }

  private static List<Row> seen(Path pool) throws SQLException {
    try (PoolTables tables = PoolTables.open(pool)) {
      List<Row> seen = new ArrayList<>();
      String sql = "SELECT subject, examination, \"time\" FROM examinations WHERE eye = 'right'";
      for (List<Optional<Object>> cells : tables.ask(sql).cells()) {
        seen.add(
            new Row(
                (String) cells.get(0).orElseThrow(),
                (String) cells.get(1).orElseThrow(),
                ((java.sql.Timestamp) cells.get(2).orElseThrow()).toLocalDateTime()));
      }
      return seen;
    }
  }

  /** Neither the tables nor any file beside them hold a word of the names of the inputs. */
  @Test
  void theNamesOfTheInputsReachNothingThatIsShared() throws IOException, SQLException {
    try (PoolTables tables = PoolTables.open(folder.resolve("pool"))) {
      for (String table : List.of("findings", "examinations", "steps")) {
        String sql = "SELECT count(*) FROM %s one WHERE contains(one::VARCHAR, '%s')";
        assertEquals(Optional.of(0L), tables.ask(sql.formatted(table, MARK)).cells().get(0).get(0));
      }
    }
    int texts = 0;
    for (Path file : files()) {
      assertFalse(file.toString().contains(MARK), file::toString);
      if (!file.toString().endsWith(".parquet")) {
        texts++;
        assertFalse(Files.readString(file).contains(MARK), file::toString);
      }
    }
    assertTrue(texts > 3 && Files.size(folder.resolve("pool/leftover.ndjson")) > 0);
  }

  private static List<Path> files() throws IOException {
    try (Stream<Path> files = Files.walk(folder.resolve("pool"))) {
      return files.filter(Files::isRegularFile).toList();
    }
  }

  @Test
  void theOrderOfTheRowsTellsNoDay() {
    assertChance(inOrder(rows));
  }

  @Test
  void theOrderOfTheMovedDaysTellsNoDay() {
    List<Row> byTime = new ArrayList<>(rows);
    byTime.sort(Comparator.comparing(Row::time));
    assertChance(inOrder(byTime));
  }

  /** Guesses that the rows lie evenly between the first and the last day. */
  private static ToLongFunction<Row> inOrder(List<Row> rows) {
    Map<Row, Integer> places = new HashMap<>();
    for (Row row : rows) {
      places.putIfAbsent(row, places.size());
    }
    return row -> first() + (last() - first()) * places.getOrDefault(row, 0) / rows.size();
  }

  @Test
  void theFirstAndTheLastMovedDayDoNotPinTheOthers() {
    long least = rows.stream().mapToLong(AttackTest::day).min().orElseThrow();
    long most = rows.stream().mapToLong(AttackTest::day).max().orElseThrow();
    assertChance(row -> first() + day(row) - least);
    assertChance(row -> last() + day(row) - most);
  }

  /** The intervals stay: who has the longest course is guessed to have begun on the first day. */
  @Test
  void theIntervalsPinNoDay() {
    Map<String, Long> begins = new HashMap<>();
    Map<String, Long> ends = new HashMap<>();
    for (Row row : rows) {
      begins.merge(row.subject(), day(row), Math::min);
      ends.merge(row.subject(), day(row), Math::max);
    }
    assertChance(
        row -> {
          long begin = begins.getOrDefault(row.subject(), 0L);
          long free = last() - first() - (ends.getOrDefault(row.subject(), 0L) - begin);
          return first() + free / 2 + day(row) - begin;
        });
  }

  @Test
  void neitherTimesOfDayNorDaysOfTheWeekAreLeft() {
    Set<Long> weekdays = new HashSet<>();
    for (Row row : rows) {
      assertEquals(0, row.time().getHour() * 60 + row.time().getMinute());
      weekdays.add(Math.floorMod(day(row), (long) WEEK));
    }
    assertEquals(1, weekdays.size());
  }

  /** The attack itself must be able to succeed: knowing how far one person was moved, it does. */
  @Test
  void whoKnowsHowFarAPersonWasMovedFindsEveryDay() {
    Map<String, Long> moved = new HashMap<>();
    for (Row row : rows) {
      moved.putIfAbsent(row.subject(), day(row) - truth(row));
    }
    ToLongFunction<Row> guess = row -> day(row) - moved.getOrDefault(row.subject(), 0L);
    assertEquals(rows.size(), guesses().hits(at -> guess.applyAsLong(rows.get(at))));
  }

  private static void assertChance(ToLongFunction<Row> guess) {
    guesses().assertChance(at -> guess.applyAsLong(rows.get(at)));
  }

  private static Guesses guesses() {
    return new Guesses(rows.stream().map(AttackTest::truth).toList());
  }

  private static long first() {
    return study.getMin();
  }

  private static long last() {
    return study.getMax();
  }

  private static long truth(Row row) {
    return Optional.ofNullable(TRUTH.get(row.examination())).orElseThrow().toEpochDay();
  }

  private static long day(Row row) {
    return ChronoUnit.DAYS.between(LocalDate.EPOCH, row.time().toLocalDate());
  }
}
