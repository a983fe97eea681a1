package org.isopter.spark;

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
import java.util.List;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.isopter.mapper.table.ExaminationsTable;
import org.isopter.mapper.table.FindingsTable;
import org.isopter.mapper.table.StepsTable;
import org.isopter.mapper.table.Table;
import org.isopter.model.catalogue.Catalogue;

/** Compares a pool of one machine with one of a cluster, by a database that made neither. */
final class Comparison implements AutoCloseable {

  private static final String TIMES = ",\"times\":";

  private final Connection database;
  private final Path here;
  private final Path there;

  Comparison(Path here, Path there) throws SQLException {
    this.database = DriverManager.getConnection("jdbc:duckdb:");
    this.here = here;
    this.there = there;
  }

  void assertSame() throws SQLException, IOException {
    assertSame(FindingsTable.table(), "findings/*/*.parquet");
    assertSame(ExaminationsTable.table(Catalogue.standard()), "examinations/*.parquet");
    assertSame(StepsTable.table(), "steps/*.parquet");
    for (String file : List.of("codebook.csv", "codebook.md", "risk.csv", "small-cells.csv")) {
      assertEquals(Files.readString(here.resolve(file)), Files.readString(there.resolve(file)));
    }
    assertEquals(lines(here.resolve("leftover.ndjson")), leftover(there.resolve("leftover")));
  }

  private void assertSame(Table<?> table, String files) throws SQLException {
    String names =
        table.columns().stream()
            .map(column -> '"' + column.name() + '"')
            .collect(Collectors.joining(", "));
    String one = "SELECT %s FROM '%s'".formatted(names, here.resolve(table.name() + ".parquet"));
    String other =
        "SELECT %s FROM read_parquet('%s', hive_partitioning = true, hive_types_autocast = false)"
            .formatted(names, there.resolve(files));
    assertEquals(types(one), types(other), table.name());
    assertTrue(count(one) > 0, table.name());
    assertEquals(0, count(one + " EXCEPT ALL " + other), table.name());
    assertEquals(0, count(other + " EXCEPT ALL " + one), table.name());
  }

  private List<String> types(String select) throws SQLException {
    try (Statement statement = database.createStatement();
        ResultSet rows = statement.executeQuery("DESCRIBE " + select)) {
      List<String> types = new ArrayList<>();
      while (rows.next()) {
        types.add(rows.getString("column_name") + " " + rows.getString("column_type"));
      }
      return types;
    }
  }

  private long count(String select) throws SQLException {
    try (Statement statement = database.createStatement();
        ResultSet rows = statement.executeQuery("SELECT count(*) FROM (" + select + ")")) {
      rows.next();
      return rows.getLong(1);
    }
  }

  /** Returns the lines as often as each of them says. */
  private static List<String> lines(Path file) throws IOException {
    List<String> all = new ArrayList<>();
    for (String line : Files.readAllLines(file)) {
      int mark = line.lastIndexOf(TIMES);
      int times = Integer.parseInt(line.substring(mark + TIMES.length(), line.length() - 1));
      all.addAll(Collections.nCopies(times, line.substring(0, mark) + "}"));
    }
    return all.stream().sorted().toList();
  }

  private static List<String> leftover(Path folder) throws IOException {
    List<String> all = new ArrayList<>();
    try (Stream<Path> files = Files.list(folder)) {
      for (Path file : files.filter(each -> each.toString().endsWith(".txt")).toList()) {
        all.addAll(Files.readAllLines(file));
      }
    }
    return all.stream().sorted().toList();
  }

  @Override
  public void close() throws SQLException {
    database.close();
  }
}
