package org.isopter.mapper.store;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalDateTime;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Optional;
import java.util.Random;
import org.isopter.mapper.table.Column;
import org.isopter.mapper.table.Kind;
import org.isopter.mapper.table.SparseRow;
import org.isopter.mapper.table.Table;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Rows come in the order of their keys, in whatever order and in how many parts they waited. */
class WaitingRowsTest {

  private static final Table<List<Optional<?>>> TABLE =
      new Table<>(
          "rows",
          List.of(
              column("subject", 0, Kind.TEXT),
              column("examination", 1, Kind.TEXT),
              column("part", 2, Kind.TEXT),
              column("number", 3, Kind.NUMBER),
              column("count", 4, Kind.INTEGER),
              column("truth", 5, Kind.TRUTH),
              column("time", 6, Kind.TIME)));

  private static final LocalDateTime TIME = LocalDateTime.of(2099, 12, 31, 23, 59, 59, 1_000);

  @TempDir Path folder;

  @Test
  void examinationsComeByTheirKeysAndAnEmptyPartComesLast() throws IOException {
    List<String> shuffled = new ArrayList<>();
    for (int i = 0; i < 500; i++) {
      shuffled.add("%03d".formatted(i));
    }
    List<String> ordered = List.copyOf(shuffled);
    Collections.shuffle(shuffled, new Random(5));
    List<String> seen = new ArrayList<>();
    for (List<?> row : sorted(200, shuffled)) {
      seen.add(row.get(0) + " " + row.get(1));
    }
    List<String> wanted = new ArrayList<>();
    ordered.forEach(
        key -> {
          wanted.add(key + " a");
          wanted.add(key + " é");
          wanted.add(key + " -");
        });
    assertEquals(wanted, seen);
  }

  @Test
  void anExaminationThatWasReadTwiceHasItsRowsTogether() throws IOException {
    List<List<?>> rows = sorted(1, List.of("2", "1", "2"));
    assertEquals(
        List.of("1 a", "1 é", "1 -", "2 a", "2 a", "2 é", "2 é", "2 -", "2 -"),
        rows.stream().map(row -> row.get(0) + " " + row.get(1)).toList());
    assertEquals(rows, sorted(1 << 20, List.of("2", "2", "1")));
  }

  @Test
  void everyKindOfValueComesBack() throws IOException {
    List<Optional<?>> cells =
        List.of(
            Optional.of("s"),
            Optional.of("e"),
            Optional.of("\ud83d\udc41 ".repeat(200)),
            Optional.of(-0.1),
            Optional.of(Long.MIN_VALUE),
            Optional.of(false),
            Optional.of(TIME));
    RowOrder order = new RowOrder(TABLE);
    PackedRows packed = PackedRows.of(order, List.of(SparseRow.of(cells)));
    assertEquals(
        cells.stream().map(Optional::orElseThrow).toList(),
        java.util.Arrays.stream(packed.rows().get(0).values())
            .map(value -> value instanceof PackedText text ? text.toString() : value)
            .toList());
  }

  /** Returns keys and parts of rows, three for each examination, after they waited. */
  private List<List<?>> sorted(int bytes, List<String> keys) throws IOException {
    RowOrder order = new RowOrder(TABLE);
    Path file = folder.resolve("waiting");
    List<List<?>> seen = new ArrayList<>();
    try (WaitingRows waiting = new WaitingRows(order, file, bytes)) {
      for (String key : keys) {
        List<SparseRow> rows = new ArrayList<>();
        for (String part : List.of("é", "", "a")) {
          rows.add(SparseRow.of(cells(key, Optional.of(part).filter(one -> !one.isEmpty()))));
        }
        waiting.add(PackedRows.of(order, rows));
      }
      waiting
          .sorted()
          .forEachRemaining(
              row -> seen.add(List.of(row.text(0).orElseThrow(), row.text(2).orElse("-"))));
    }
    assertFalse(Files.exists(file), "what waited is gone");
    return seen;
  }

  private static List<Optional<?>> cells(String key, Optional<String> part) {
    return List.of(
        Optional.of(key),
        Optional.of("e" + key),
        part,
        Optional.of(1.5),
        Optional.empty(),
        Optional.of(true),
        Optional.of(TIME));
  }

  private static Column<List<Optional<?>>> column(String name, int at, Kind kind) {
    return new Column<>(name, kind, name, Optional.empty(), List.of(), row -> row.get(at));
  }
}
