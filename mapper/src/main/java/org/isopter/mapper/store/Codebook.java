package org.isopter.mapper.store;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.sql.SQLException;
import java.util.ArrayList;
import java.util.BitSet;
import java.util.Collections;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import org.isopter.mapper.table.Column;
import org.isopter.mapper.table.Kind;
import org.isopter.mapper.table.Table;
import org.isopter.model.value.Unit;

/** Says of every column of every table what it means and how much of it there is. */
public final class Codebook {

  /** What a cell of CSV does not hold without quotes. */
  private static final Pattern SPECIAL = Pattern.compile("[\",\r\n]");

  private final TableStore store;
  private final List<CodebookRow> rows = new ArrayList<>();

  private Codebook(TableStore store) {
    this.store = store;
  }

  /**
   * Counts the columns of tables, of which those that no row fills are known to be empty.
   *
   * @throws SQLException when the database refuses it, for instance for a full disk
   */
  public static Codebook of(TableStore store, List<TableDraft> tables) throws SQLException {
    Codebook codebook = new Codebook(store);
    for (TableDraft table : tables) {
      codebook.count(table.table(), table.filled());
    }
    return codebook;
  }

  /**
   * Writes it as CSV, as Markdown, and as a Frictionless data package of the CSV or NDJSON.
   *
   * @throws IOException when a file cannot be written
   */
  public void write(Path folder, List<TableFormat> formats) throws IOException {
    Files.writeString(folder.resolve("codebook.csv"), csv(rows));
    Files.writeString(folder.resolve("codebook.md"), page(rows));
    Files.writeString(folder.resolve("datapackage.json"), DataPackage.of(rows, formats));
  }

  /** Returns a codebook as CSV (RFC 4180, with a line feed after each line). */
  public static String csv(List<CodebookRow> rows) {
    Table<CodebookRow> table = table();
    StringBuilder text = new StringBuilder();
    text.append(table.columns().stream().map(Column::name).collect(Collectors.joining(",")));
    for (CodebookRow row : rows) {
      text.append('\n').append(line(table.cells(row)));
    }
    return text.append('\n').toString();
  }

  private static String line(List<Optional<?>> cells) {
    return cells.stream()
        .map(cell -> cell.map(Object::toString).map(Codebook::quoted).orElse(""))
        .collect(Collectors.joining(","));
  }

  private static String quoted(String cell) {
    return cell.isEmpty() || SPECIAL.matcher(cell).find()
        ? '"' + cell.replace("\"", "\"\"") + '"'
        : cell;
  }

  /** Returns a codebook as Markdown, for people. */
  public static String page(List<CodebookRow> rows) {
    return CodebookPage.of(rows);
  }

  /** Returns a row for each column of each table. */
  public List<CodebookRow> rows() {
    return Collections.unmodifiableList(rows);
  }

  private void count(Table<?> table, BitSet filled) throws SQLException {
    List<String> counted = new ArrayList<>();
    for (int i = 0; i < table.columns().size(); i++) {
      Column<?> column = table.columns().get(i);
      String name = TableStore.name(column.name());
      boolean ordered =
          filled.get(i) && (column.kind() == Kind.NUMBER || column.kind() == Kind.INTEGER);
      counted.add(filled.get(i) ? "count(" + name + ")" : "0::BIGINT");
      counted.add(ordered ? "min(" + name + ")::VARCHAR" : "NULL");
      counted.add(ordered ? "max(" + name + ")::VARCHAR" : "NULL");
    }
    // With a count in it there is an answer where there is no row.
    counted.add("count(*)");
    String sql = "SELECT " + String.join(", ", counted) + " FROM " + TableStore.name(table.name());
    List<Optional<Object>> answer = store.ask(sql).get(0);
    for (int i = 0; i < table.columns().size(); i++) {
      rows.add(
          new CodebookRow(
              table.name(),
              table.columns().get(i),
              (Long) answer.get(3 * i).orElse(0L),
              answer.get(3 * i + 1).map(Object::toString),
              answer.get(3 * i + 2).map(Object::toString)));
    }
  }

  private static Table<CodebookRow> table() {
    return new Table<>(
        "codebook",
        List.of(
            text("table", row -> Optional.of(row.table())),
            text("column", row -> Optional.of(row.column().name())),
            text("kind", row -> Optional.of(kind(row))),
            text("meaning", row -> Optional.of(row.column().meaning())),
            text("unit", row -> row.column().unit().map(Unit::ucum)),
            text("unit_name", row -> row.column().unit().map(Unit::label)),
            text("answers", CodebookRow::answers),
            new Column<>(
                "filled",
                Kind.INTEGER,
                "cells that are not empty",
                Optional.empty(),
                List.of(),
                row -> Optional.of(row.filled())),
            text("least", CodebookRow::least),
            text("most", CodebookRow::most)));
  }

  private static Column<CodebookRow> text(
      String name, java.util.function.Function<CodebookRow, Optional<?>> cell) {
    return new Column<>(name, Kind.TEXT, name, Optional.empty(), List.of(), cell);
  }

  static String kind(CodebookRow row) {
    return row.column().kind().name().toLowerCase(Locale.ROOT);
  }
}
