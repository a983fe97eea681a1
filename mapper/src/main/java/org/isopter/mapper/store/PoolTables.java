package org.isopter.mapper.store;

import java.nio.file.Path;
import java.sql.SQLException;
import java.util.List;
import java.util.Optional;
import java.util.stream.Collectors;
import org.isopter.mapper.table.ExaminationsTable;
import org.isopter.mapper.table.FindingsTable;
import org.isopter.mapper.table.StepsTable;
import org.isopter.mapper.table.Table;
import org.isopter.model.catalogue.Catalogue;
import org.isopter.model.value.Fault;
import org.isopter.model.value.FaultException;

/** The tables of a pool, to be asked in SQL; nothing in the folder is changed. */
public final class PoolTables implements AutoCloseable {

  /**
   * What came of a question.
   *
   * @param columns the names of the columns
   * @param cells the rows; a cell may be empty
   */
  public record Rows(List<String> columns, List<List<Optional<Object>>> cells) {}

  private final TableStore store;

  private PoolTables(TableStore store) {
    this.store = store;
  }

  /**
   * Opens the tables in a folder, in whichever format they are there.
   *
   * @throws FaultException when a table is not there
   * @throws SQLException when the database refuses it, for instance for a full disk
   */
  public static PoolTables open(Path folder) throws SQLException {
    return open(folder, Optional.empty());
  }

  /**
   * Opens the tables in a folder, and beside them the file of where examinations were read, as the
   * view {@code origins}, which is empty without the file.
   *
   * @throws FaultException when a table is not there
   * @throws SQLException when the database refuses it, for instance for a full disk
   */
  public static PoolTables open(Path folder, Optional<Path> origins) throws SQLException {
    TableStore store = TableStore.inMemory();
    for (Table<?> table : tables()) {
      file(folder, table).open(store);
    }
    steps(store, folder);
    String columns = "examination: 'VARCHAR', source: 'VARCHAR', line: 'BIGINT'";
    store.execute(
        "CREATE VIEW origins AS "
            + origins
                .map(file -> TableStore.text(file.toString()))
                .map(
                    file ->
                        "FROM read_json(%s, format = 'newline_delimited', columns = {%s})"
                            .formatted(file, columns))
                .orElse(
                    "SELECT NULL::VARCHAR AS examination, NULL::VARCHAR AS source, NULL::BIGINT AS line LIMIT 0"));
    return new PoolTables(store);
  }

  /** Opens the table of the usual steps, which is empty where the pool is of an older version. */
  private static void steps(TableStore store, Path folder) throws SQLException {
    Table<?> steps = StepsTable.table();
    Optional<TableFile> file = TableFile.find(folder, steps);
    if (file.isPresent()) {
      file.get().open(store);
    } else {
      String columns =
          steps.columns().stream()
              .map(column -> "NULL::" + TableStore.type(column) + " AS " + column.name())
              .collect(Collectors.joining(", "));
      store.execute("CREATE VIEW " + StepsTable.NAME + " AS SELECT " + columns + " LIMIT 0");
    }
  }

  /**
   * Asks a question in SQL about the views of the tables.
   *
   * @throws SQLException when the database refuses it, for instance for a full disk
   */
  public Rows ask(String sql) throws SQLException {
    return store.rows(sql);
  }

  /** Returns why a question failed, on one line. */
  public static String why(SQLException failed) {
    String message = String.valueOf(failed.getMessage());
    // Where there are several lines, the first may only say that there is an error.
    return message
        .lines()
        .filter(line -> line.startsWith("Error: "))
        .map(line -> line.substring("Error: ".length()))
        .findFirst()
        .or(() -> message.lines().findFirst())
        .orElse(message);
  }

  /** Says whether a folder holds the tables of a pool. */
  public static boolean isPool(Path folder) {
    return tables().stream().allMatch(table -> TableFile.find(folder, table).isPresent());
  }

  private static List<Table<?>> tables() {
    return List.of(FindingsTable.table(), ExaminationsTable.table(Catalogue.standard()));
  }

  /** Returns the file of a table in a folder. */
  static TableFile file(Path folder, Table<?> table) {
    return TableFile.find(folder, table)
        .orElseThrow(
            () ->
                new FaultException(
                    new Fault(
                        folder.toString(),
                        "no table " + table.name(),
                        "a folder that was made by pooling",
                        "pool the records first, and name the folder of the pool")));
  }

  @Override
  public void close() throws SQLException {
    store.close();
  }
}
