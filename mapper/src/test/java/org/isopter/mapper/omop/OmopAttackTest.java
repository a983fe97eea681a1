package org.isopter.mapper.omop;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.sql.Connection;
import java.sql.DriverManager;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.sql.Statement;
import java.util.ArrayList;
import java.util.Collections;
import java.util.Comparator;
import java.util.EnumMap;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.ToLongFunction;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import org.isopter.mapper.pool.PoolDocument;
import org.isopter.mapper.pool.PoolPlan;
import org.isopter.mapper.pool.Pools;
import org.isopter.mapper.privacy.DateShift;
import org.isopter.mapper.privacy.Deidentifier;
import org.isopter.mapper.privacy.Guesses;
import org.isopter.model.exam.Exam;
import org.isopter.model.simulate.Cohort;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.DynamicTest;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.TestFactory;
import org.junit.jupiter.api.io.TempDir;

/**
 * An attacker who has the tables of the OMOP model and knows the first and the last day of the
 * study, and that the input was sorted by day, finds no day within a week better than by chance:
 * neither by ids, dates and the order of rows, nor by how a person's visits follow each other.
 */
class OmopAttackTest {

  private static final int PERSONS = 200;

  /** The least and the most days by which the times of a person are moved: no secret. */
  private static final Map<DateShift, long[]> MOVED =
      new EnumMap<>(
          Map.of(
              DateShift.AHEAD, new long[] {36_525, 73_049},
              DateShift.BACK, new long[] {-18_263, -2}));

  /**
   * A visit as the attacker sees it.
   *
   * @param row the place of its row in the file
   * @param id its id
   * @param person the id of its person
   * @param measured the id of its first measurement, or 0
   * @param seen the id of its first observation, or 0
   * @param day the day that is given, counted from 1970
   * @param before how many visits of the person come before it
   * @param visits how many visits the person has
   * @param begin the first day of the observation period of its person
   * @param end the last day of it
   */
  private record Visit(
      long row,
      long id,
      long person,
      long measured,
      long seen,
      long day,
      long before,
      long visits,
      long begin,
      long end) {}

  private static final String VISITS =
      """
      SELECT v.file_row_number, v.visit_occurrence_id, v.person_id,
        coalesce(m.id, 0), coalesce(o.id, 0), v.visit_start_date - DATE '1970-01-01',
        row_number() OVER (PARTITION BY v.person_id ORDER BY v.visit_start_date,
          v.visit_occurrence_id) - 1,
        count(*) OVER (PARTITION BY v.person_id),
        p.observation_period_start_date - DATE '1970-01-01',
        p.observation_period_end_date - DATE '1970-01-01', k.examination_key
      FROM read_parquet('%1$s/visit_occurrence.parquet', file_row_number = true) v
      JOIN '%1$s/visit_keys.parquet' k USING (visit_occurrence_id)
      JOIN '%1$s/observation_period.parquet' p USING (person_id)
      LEFT JOIN (SELECT visit_occurrence_id, min(measurement_id) AS id
        FROM '%1$s/measurement.parquet' GROUP BY ALL) m USING (visit_occurrence_id)
      LEFT JOIN (SELECT visit_occurrence_id, min(observation_id) AS id
        FROM '%1$s/observation.parquet' GROUP BY ALL) o USING (visit_occurrence_id)
      ORDER BY hash(v.visit_occurrence_id)""";

  @TempDir static Path folder = Path.of("");

  private static final Map<String, Long> TRUTH = new HashMap<>();
  private static final Map<DateShift, List<Visit>> SEEN = new EnumMap<>(DateShift.class);
  private static final Map<DateShift, Guesses> GUESSES = new EnumMap<>(DateShift.class);

  @BeforeAll
  static void poolASortedInput() throws IOException, SQLException {
    List<Exam> exams =
        new Cohort(PERSONS, 67)
            .exams()
            .sorted(Comparator.comparing((Exam exam) -> exam.header().performed().toInstant()))
            .toList();
    for (Exam exam : exams) {
      TRUTH.put(
          new Deidentifier(Pools.KEY, false).examination(exam.header().id()).toString(),
          exam.header().performed().toLocalDate().toEpochDay());
    }
    for (DateShift shift : DateShift.values()) {
      pool(shift.toString(), shift, exams);
      look(shift);
    }
    List<Exam> reversed = new ArrayList<>(exams);
    Collections.reverse(reversed);
    pool("reversed", DateShift.BACK, reversed);
  }

  private static void pool(String name, DateShift shift, List<Exam> exams) throws IOException {
    List<PoolDocument> documents = new ArrayList<>();
    exams.forEach(exam -> documents.add(Pools.record(exam, documents.size() + 1)));
    Path vocabulary = Vocabulary.write(folder.resolve("vocabulary"));
    Deidentifier deidentifier = new Deidentifier(Pools.KEY, false).moving(shift);
    Pools.run(
        PoolPlan.of(folder.resolve(name), deidentifier).omop(Optional.of(vocabulary)), documents);
  }

  private static void look(DateShift shift) throws SQLException {
    List<Visit> visits = new ArrayList<>();
    List<Long> truths = new ArrayList<>();
    try (Connection connection = DriverManager.getConnection("jdbc:duckdb:");
        Statement statement = connection.createStatement();
        ResultSet rows = statement.executeQuery(VISITS.formatted(omop(shift.toString())))) {
      while (rows.next()) {
        visits.add(visit(rows));
        truths.add(Optional.ofNullable(TRUTH.get(rows.getString(11))).orElseThrow());
      }
    }
    assertTrue(visits.size() > PERSONS, visits.size() + " visits");
    SEEN.put(shift, visits);
    GUESSES.put(shift, new Guesses(truths));
  }

  private static Visit visit(ResultSet rows) throws SQLException {
    return new Visit(
        rows.getLong(1),
        rows.getLong(2),
        rows.getLong(3),
        rows.getLong(4),
        rows.getLong(5),
        rows.getLong(6),
        rows.getLong(7),
        rows.getLong(8),
        rows.getLong(9),
        rows.getLong(10));
  }

  private static Path omop(String pool) {
    return folder.resolve(pool).resolve(OmopTables.FOLDER);
  }

  /** Places in a file, ids and days are guessed to follow the calendar evenly. */
  @TestFactory
  Stream<DynamicTest> whatCanBePutInOrderTellsNoDay() {
    Map<String, ToLongFunction<Visit>> orders =
        Map.of(
            "rows", Visit::row,
            "visits", Visit::id,
            "persons", Visit::person,
            "measurements", Visit::measured,
            "observations", Visit::seen,
            "days", Visit::day);
    return both(
        shift ->
            orders.entrySet().stream()
                .map(order -> Map.entry(order.getKey(), evenly(shift, order.getValue()))));
  }

  private static ToLongFunction<Visit> evenly(DateShift shift, ToLongFunction<Visit> order) {
    List<Visit> sorted = new ArrayList<>(seen(shift));
    sorted.sort(Comparator.comparingLong(order));
    Map<Visit, Integer> places = new HashMap<>();
    sorted.forEach(visit -> places.put(visit, places.size()));
    long first = guesses(shift).first();
    long all = guesses(shift).last() - first;
    return visit -> first + all * places.getOrDefault(visit, 0) / sorted.size();
  }

  /**
   * The ends of the given days are laid on those of the study; a course lies in the middle of what
   * room it has; the visits of a person lie evenly; and the limits of the move are known.
   */
  @TestFactory
  Stream<DynamicTest> whereACourseFitsTellsNoDay() {
    return both(
        shift -> {
          long first = guesses(shift).first();
          long last = guesses(shift).last();
          long least = seen(shift).stream().mapToLong(Visit::day).min().orElseThrow();
          long most = seen(shift).stream().mapToLong(Visit::day).max().orElseThrow();
          long[] moved = Optional.ofNullable(MOVED.get(shift)).orElseThrow();
          Map<String, ToLongFunction<Visit>> guesses =
              Map.of(
                  "the first day is the first", visit -> first + visit.day() - least,
                  "the last day is the last", visit -> last + visit.day() - most,
                  "in the middle",
                      visit ->
                          (first + last - (visit.end() - visit.begin())) / 2
                              + (visit.day() - visit.begin()),
                  "evenly",
                      visit ->
                          first + (last - first) * (2 * visit.before() + 1) / (2 * visit.visits()),
                  "within the limits",
                      visit ->
                          (Math.max(first, visit.begin() - moved[1])
                                      + Math.min(last, visit.end() - moved[0]))
                                  / 2
                              + visit.day()
                              - (visit.begin() + visit.end()) / 2);
          return guesses.entrySet().stream();
        });
  }

  private static Stream<DynamicTest> both(
      java.util.function.Function<DateShift, Stream<Map.Entry<String, ToLongFunction<Visit>>>>
          attacks) {
    return Stream.of(DateShift.values())
        .flatMap(
            shift ->
                attacks
                    .apply(shift)
                    .map(
                        attack ->
                            DynamicTest.dynamicTest(
                                attack.getKey() + ", " + shift,
                                () -> assertChance(shift, attack.getValue()))));
  }

  private static void assertChance(DateShift shift, ToLongFunction<Visit> guess) {
    List<Visit> visits = seen(shift);
    guesses(shift).assertChance(at -> guess.applyAsLong(visits.get(at)));
  }

  private static List<Visit> seen(DateShift shift) {
    return Optional.ofNullable(SEEN.get(shift)).orElseThrow();
  }

  private static Guesses guesses(DateShift shift) {
    return Optional.ofNullable(GUESSES.get(shift)).orElseThrow();
  }

  /** The attack itself must be able to succeed: knowing how far a person was moved, it does. */
  @Test
  void whoKnowsHowFarAPersonWasMovedFindsEveryDay() {
    List<Visit> visits = seen(DateShift.BACK);
    Guesses guesses = guesses(DateShift.BACK);
    Map<Long, Long> moved = new HashMap<>();
    IntStream.range(0, visits.size())
        .forEach(
            at ->
                moved.putIfAbsent(
                    visits.get(at).person(), visits.get(at).day() - guesses.truths().get(at)));
    assertEquals(
        visits.size(),
        guesses.hits(at -> visits.get(at).day() - moved.getOrDefault(visits.get(at).person(), 0L)));
  }

  @Test
  void noTimeOfDayAndNoDayOfTheWeekIsLeft() throws SQLException {
    Map<String, String> times =
        Map.of(
            "visit_occurrence", "visit_start_datetime",
            "measurement", "measurement_datetime",
            "observation", "observation_datetime",
            "condition_occurrence", "condition_start_datetime");
    try (Connection connection = DriverManager.getConnection("jdbc:duckdb:");
        Statement statement = connection.createStatement()) {
      for (Map.Entry<String, String> time : times.entrySet()) {
        String sql =
            "SELECT count(DISTINCT dayofweek(%1$s)) FILTER (WHERE %1$s = %1$s::DATE), count(*)"
                + " FILTER (WHERE %1$s <> %1$s::DATE), count(*) FROM '%2$s/%3$s.parquet'";
        String file = omop("back").toString();
        try (ResultSet row =
            statement.executeQuery(sql.formatted(time.getValue(), file, time.getKey()))) {
          assertTrue(row.next() && row.getLong(3) > 0, time::getKey);
          assertEquals(1, row.getLong(1), time.getKey());
          assertEquals(0, row.getLong(2), time.getKey());
        }
      }
    }
  }

  @Test
  void nothingHangsOnTheOrderOfTheInput() throws IOException {
    for (String table : OmopTables.TABLES) {
      assertArrayEquals(
          Files.readAllBytes(omop("back").resolve(table + ".parquet")),
          Files.readAllBytes(omop("reversed").resolve(table + ".parquet")),
          table);
    }
  }

  /** By up to fifty years: of 400 persons one in eight would have one within a week. */
  @Test
  void hardlyAnyDateOfTheTablesIsNearTheTrueOne() {
    List<Visit> visits = seen(DateShift.BACK);
    long near = guesses(DateShift.BACK).hits(at -> visits.get(at).day());
    assertTrue(near <= 5, near + " of " + visits.size());
  }
}
