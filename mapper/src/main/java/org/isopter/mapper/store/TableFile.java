package org.isopter.mapper.store;

import java.nio.file.Files;
import java.nio.file.Path;
import java.sql.SQLException;
import java.util.Arrays;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;
import org.isopter.mapper.table.Column;
import org.isopter.mapper.table.Table;

/**
 * A table in a file of a pool. Parquet knows the types of its columns. CSV and NDJSON do not, and
 * what they hold tells them badly, above all where a column is empty.
 */
record TableFile(Table<?> table, TableFormat format, Path path) {

  /** Returns the file of a table in a folder, in whichever format it is there. */
  public static Optional<TableFile> find(Path folder, Table<?> table) {
    return Arrays.stream(TableFormat.values())
        .map(format -> new TableFile(table, format, path(folder, table, format)))
        .filter(file -> Files.isRegularFile(file.path()))
        .findFirst();
  }

  private static Path path(Path folder, Table<?> table, TableFormat format) {
    return folder.resolve(table.name() + "." + format.ending());
  }

  /** Makes it a view of a store. */
  void open(TableStore store) throws SQLException {
    store.execute("CREATE VIEW " + TableStore.name(table.name()) + " AS " + rows(store));
  }

  private String rows(TableStore store) throws SQLException {
    return switch (format) {
      case PARQUET -> selected(store, "read_parquet(" + file() + ")");
      case NDJSON ->
          "SELECT * FROM read_json(%s, format = 'newline_delimited', columns = {%s})"
              .formatted(file(), types());
      case CSV -> selected(store, csv());
    };
  }

  private String file() {
    return TableStore.text(path.toString());
  }

  private String csv() {
    return "read_csv(%s, delim = ',', quote = '\"', escape = '\"', header = true, all_varchar = true)"
        .formatted(file());
  }

  private String types() {
    return table.columns().stream()
        .map(column -> TableStore.text(column.name()) + ": '" + TableStore.type(column) + "'")
        .collect(Collectors.joining(", "));
  }

  /** A pool of another version may have other columns: what it lacks is empty. */
  private String selected(TableStore store, String from) throws SQLException {
    Set<String> there = new LinkedHashSet<>();
    for (List<Optional<Object>> row : store.ask("DESCRIBE SELECT * FROM " + from)) {
      there.add(String.valueOf(row.get(0).orElse("")));
    }
    String cells =
        table.columns().stream()
            .map(column -> cell(column, there.contains(column.name())))
            .collect(Collectors.joining(", "));
    return "SELECT " + cells + " FROM " + from;
  }

  private static String cell(Column<?> column, boolean there) {
    String name = TableStore.name(column.name());
    return "%s::%s AS %s".formatted(there ? name : "NULL", TableStore.type(column), name);
  }
}
