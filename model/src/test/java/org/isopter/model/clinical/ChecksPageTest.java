package org.isopter.model.clinical;

import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Path;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.stream.Collector;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.isopter.model.Goldens;
import org.junit.jupiter.api.Test;

/** Keeps the page of check tables current; {@code -Dgolden=update} writes it anew. */
class ChecksPageTest {

  private static final Path PAGE = Path.of("..", "docs", "checks.md");

  private static final String HEAD =
      """
      # What the clinical functions are checked against

      Every row of every table below is gone through by the test named beside it; a row that is
      left out is listed with the reason. The tables lie in `model/src/test/resources/checks`, and
      each row there names its source. No clinician has signed them off.

      This page is written by a test (`-Dgolden=update`) and compared by it.

      | table | rows | checked | test | source seen | seen in part | from memory | other |
      |---|---:|---:|---|---:|---:|---:|---:|
      """;

  @Test
  void isCurrent() throws IOException {
    Goldens.check(PAGE, page());
  }

  @Test
  void leavesOutOnlyRowsThatExist() {
    for (CheckTable table : CheckTable.values()) {
      for (String row : Omissions.of(table).keySet()) {
        assertTrue(table.all().stream().anyMatch(one -> one.name().equals(row)), row);
      }
      assertTrue(table.rows().findAny().isPresent(), table.file());
    }
  }

  @Test
  void namesASourceInEveryRow() {
    for (CheckTable table : CheckTable.values()) {
      table.all().forEach(row -> assertTrue(!row.isBlank("source"), row.toString()));
    }
  }

  private static String page() {
    String tables = Stream.of(CheckTable.values()).map(ChecksPageTest::line).collect(lines());
    String omitted =
        Stream.of(CheckTable.values()).flatMap(ChecksPageTest::omitted).collect(lines());
    String sources = Stream.of(CheckTable.values()).map(ChecksPageTest::sources).collect(lines());
    return HEAD + tables + "\n## Rows left out\n\n" + omitted + "\n## Sources\n" + sources;
  }

  private static Collector<CharSequence, ?, String> lines() {
    return Collectors.joining("\n", "", "\n");
  }

  private static String line(CheckTable table) {
    Map<Mark, Long> marks =
        table.all().stream().collect(Collectors.groupingBy(Mark::of, Collectors.counting()));
    return "| %s | %s | %s | %s | %s | %s | %s | %s |"
        .formatted(
            table.file(),
            table.all().size(),
            table.rows().count(),
            table.test().getSimpleName(),
            marks.getOrDefault(Mark.SEEN, 0L),
            marks.getOrDefault(Mark.IN_PART, 0L),
            marks.getOrDefault(Mark.FROM_MEMORY, 0L),
            marks.getOrDefault(Mark.OTHER, 0L));
  }

  private static Stream<String> omitted(CheckTable table) {
    return table.all().stream()
        .map(CheckRow::name)
        .filter(Omissions.of(table)::containsKey)
        .map(row -> "* %s, %s: %s".formatted(table.file(), row, Omissions.of(table).get(row)));
  }

  private static String sources(CheckTable table) {
    Map<String, Long> rows =
        table.all().stream()
            .collect(
                Collectors.groupingBy(
                    row -> row.cell("source"), LinkedHashMap::new, Collectors.counting()));
    String list =
        rows.entrySet().stream()
            .map(source -> "* (%s) %s".formatted(source.getValue(), source.getKey()))
            .collect(Collectors.joining("\n"));
    return "\n### " + table.file() + "\n\n" + list;
  }

  /** What a row says of its own source. */
  private enum Mark {
    SEEN,
    IN_PART,
    FROM_MEMORY,
    OTHER;

    static Mark of(CheckRow row) {
      String source = row.cell("source");
      boolean memory = source.contains("from memory");
      if (source.contains("verified")) {
        return memory ? IN_PART : SEEN;
      }
      return memory ? FROM_MEMORY : OTHER;
    }
  }
}
