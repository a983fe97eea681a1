package org.isopter.mapper.pool;

import static java.nio.charset.StandardCharsets.UTF_8;
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
import java.time.LocalDate;
import java.time.temporal.ChronoUnit;
import java.util.ArrayList;
import java.util.Collections;
import java.util.Comparator;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeSet;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.isopter.mapper.person.PersonsFile;
import org.isopter.mapper.privacy.Deidentifier;
import org.isopter.mapper.privacy.TimeGrain;
import org.isopter.model.catalogue.Catalogue;
import org.isopter.model.exam.Exam;
import org.isopter.model.simulate.Cohort;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/**
 * An attacker who looks at the files of a pool and not only at its tables: how long they are, what
 * they say of how they were made, what was deleted in them; and one who knows when people were
 * born.
 */
class FileAttackTest {

  private static final int PERSONS = 130;

  /** What differs between two runs: the time of the run, and where the database puts its blocks. */
  private static final Set<String> OF_A_RUN = Set.of("provenance.json", "tables.duckdb");

  @TempDir static Path folder = Path.of("");

  private static final List<Exam> EXAMS =
      new Cohort(PERSONS, 47)
          .exams()
          .sorted(Comparator.comparing((Exam exam) -> exam.header().performed().toInstant()))
          .toList();

  @BeforeAll
  static void poolTheSameBothWays() throws IOException {
    pool("sorted", EXAMS);
    List<Exam> reversed = new ArrayList<>(EXAMS);
    Collections.reverse(reversed);
    pool("reversed", reversed);
  }

  private static void pool(String name, List<Exam> exams) throws IOException {
    List<PoolDocument> documents = new ArrayList<>();
    exams.forEach(exam -> documents.add(Pools.record(exam, documents.size() + 1)));
    Pools.run(Pools.everything(folder.resolve(name), false, false), documents);
  }

  /** Names, lengths and bytes: nothing at all follows from the order in which documents came. */
  @Test
  void nothingHangsOnTheOrderOfTheInput() throws IOException {
    Set<String> names = names("sorted");
    assertEquals(names, names("reversed"));
    assertTrue(names.size() > 10 && names.containsAll(OF_A_RUN), names::toString);
    for (String name : names) {
      if (!OF_A_RUN.contains(name)) {
        assertArrayEquals(
            Files.readAllBytes(folder.resolve("sorted").resolve(name)),
            Files.readAllBytes(folder.resolve("reversed").resolve(name)),
            name);
      }
    }
  }

  private static Set<String> names(String pool) throws IOException {
    try (Stream<Path> files = Files.list(folder.resolve(pool))) {
      return files
          .map(file -> file.getFileName().toString())
          .collect(Collectors.toCollection(TreeSet::new));
    }
  }

  /**
   * What is deleted in a database lies in its file until something else is put there: the bundles,
   * in the order of the input. Former states of the list of its tables are few blocks.
   */
  @Test
  void theDatabaseHoldsNothingThatWasDeleted() throws SQLException {
    String file = folder.resolve("sorted/tables.duckdb").toString();
    try (Connection connection = DriverManager.getConnection("jdbc:duckdb:" + file);
        Statement statement = connection.createStatement()) {
      String free = ask(statement, "SELECT free_blocks FROM pragma_database_size()").get(0);
      assertTrue(Integer.parseInt(free) < 8, free + " blocks");
      assertEquals(
          List.of("examinations", "findings", "risk", "small_cells", "steps"),
          ask(statement, "SELECT table_name FROM duckdb_tables() ORDER BY table_name"));
      for (String table : List.of("examinations", "findings", "steps")) {
        String rows = "SELECT subject || examination FROM " + table;
        List<String> inOrder = ask(statement, rows);
        assertEquals(inOrder.stream().sorted().toList(), inOrder, table);
      }
    }
  }

  /** The groups of rows of Parquet say the least and the most of each column. */
  @Test
  void theFilesSayNothingOfHowTheyWereMade() throws SQLException {
    try (Connection connection = DriverManager.getConnection("jdbc:duckdb:");
        Statement statement = connection.createStatement()) {
      for (String table : List.of("examinations", "findings", "steps")) {
        String file = "('" + folder.resolve("sorted").resolve(table + ".parquet") + "')";
        assertEquals(List.of(), ask(statement, "SELECT key FROM parquet_kv_metadata" + file));
        for (String maker : ask(statement, "SELECT created_by FROM parquet_file_metadata" + file)) {
          assertTrue(maker.matches("DuckDB version v[0-9.]+ \\(build [0-9a-f]+\\)"), maker);
        }
        String least =
            "SELECT stats_min_value FROM parquet_metadata%s WHERE path_in_schema = '%s' ORDER BY row_group_id";
        List<String> times = ask(statement, least.formatted(file, "time"));
        assertTrue(
            !times.isEmpty() && times.stream().allMatch(time -> time.compareTo("2110") > 0),
            times::toString);
        List<String> subjects = ask(statement, least.formatted(file, "subject"));
        assertEquals(subjects.stream().sorted().toList(), subjects, table);
      }
    }
  }

  private static List<String> ask(Statement statement, String sql) throws SQLException {
    List<String> cells = new ArrayList<>();
    try (ResultSet rows = statement.executeQuery(sql)) {
      while (rows.next()) {
        cells.add(rows.getString(1));
      }
    }
    return cells;
  }

  /**
   * Who knows a birthday, and sees an age change between two visits, takes the birthday to lie
   * between them. It was moved by up to half a year: of a year and a day, fifteen days are within a
   * week of the guess.
   */
  @Test
  void anAgeThatChangesBetweenTwoVisitsTellsNoDay() throws IOException, SQLException {
    Deidentifier deidentifier = new Deidentifier(Pools.KEY, false).telling(TimeGrain.DAY);
    Map<String, LocalDate> born = new HashMap<>();
    Map<String, LocalDate> truth = new HashMap<>();
    StringBuilder csv = new StringBuilder("id,birth_date\n");
    List<PoolDocument> documents = new ArrayList<>();
    for (Exam exam : soonAgain()) {
      documents.add(Pools.record(exam, documents.size() + 1));
      String person = exam.header().subject().identifier().orElseThrow().value();
      LocalDate day = LocalDate.of(1940 + born.size() % 50, 1, 1).plusDays(born.size() * 37 % 365);
      if (born.putIfAbsent(subject(deidentifier, exam), day) == null) {
        csv.append(person).append(',').append(day).append('\n');
      }
      truth.put(
          deidentifier.examination(exam.header().id()).toString(),
          exam.header().performed().toLocalDate());
    }
    Path persons = Files.writeString(folder.resolve("persons.csv"), csv, UTF_8);
    Path pool = folder.resolve("aged");
    try (PoolRun run =
        PoolRun.begin(Catalogue.standard(), Pools.reader(), PoolPlan.of(pool, deidentifier))
            .knowing(Optional.of(PersonsFile.read(persons)))) {
      for (PoolDocument document : documents) {
        run.add(document);
      }
      run.finish();
    }
    assertFewAreFound(pool, born, truth);
  }

  /** Returns, of each person who came twice in 200 days, two such visits. */
  private static List<Exam> soonAgain() {
    Map<Object, Exam> last = new HashMap<>();
    Map<Object, List<Exam>> pairs = new LinkedHashMap<>();
    new Cohort(1_500, 53)
        .exams()
        .sorted(Comparator.comparing((Exam exam) -> exam.header().performed().toInstant()))
        .forEach(
            exam -> {
              Object person = exam.header().subject();
              Exam before = last.put(person, exam);
              if (before != null && days(before, exam) < 200) {
                pairs.putIfAbsent(person, List.of(before, exam));
              }
            });
    return pairs.values().stream().flatMap(List::stream).toList();
  }

  private static long days(Exam before, Exam exam) {
    return ChronoUnit.DAYS.between(before.header().performed(), exam.header().performed());
  }

  private static String subject(Deidentifier deidentifier, Exam exam) {
    return deidentifier.subject(exam.header().subject()).toString();
  }

  private static void assertFewAreFound(
      Path pool, Map<String, LocalDate> born, Map<String, LocalDate> truth) throws SQLException {
    String changes =
        """
        SELECT subject, examination, age, days FROM (SELECT subject, examination, age,
            lag(age) OVER visits AS before, date_diff('day', lag("time") OVER visits, "time") AS days
          FROM read_parquet('%s') WHERE eye = 'right'
          WINDOW visits AS (PARTITION BY subject ORDER BY "time"))
        WHERE age = before + 1 AND days < 200"""
            .formatted(pool.resolve("examinations.parquet"));
    int seen = 0;
    int found = 0;
    try (Connection connection = DriverManager.getConnection("jdbc:duckdb:");
        Statement statement = connection.createStatement();
        ResultSet rows = statement.executeQuery(changes)) {
      while (rows.next()) {
        LocalDate birthday =
            Optional.ofNullable(born.get(rows.getString(1)))
                .orElseThrow()
                .plusYears(rows.getInt(3));
        LocalDate guess = birthday.plusDays(rows.getInt(4) / 2);
        LocalDate day = Optional.ofNullable(truth.get(rows.getString(2))).orElseThrow();
        seen++;
        found += Math.abs(guess.toEpochDay() - day.toEpochDay()) <= 7 ? 1 : 0;
      }
    }
    double chance = seen * 15 / 366.0;
    assertTrue(seen > 100, seen + " ages change");
    assertTrue(found <= chance + 4 * Math.sqrt(chance), found + " of " + seen + " found");
  }
}
