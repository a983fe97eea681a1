package org.isopter.mapper.store;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.sql.DriverManager;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.sql.Statement;
import java.time.LocalDateTime;
import java.util.ArrayList;
import java.util.BitSet;
import java.util.Iterator;
import java.util.List;
import java.util.Optional;
import java.util.Properties;
import org.duckdb.DuckDBConnection;
import org.duckdb.DuckDBDriver;
import org.duckdb.DuckDBFunctions;
import org.duckdb.DuckDBTableFunctionBuilder;
import org.isopter.mapper.io.Passing;
import org.isopter.mapper.table.Column;
import org.isopter.mapper.table.Kind;
import org.isopter.mapper.table.SparseRow;
import org.isopter.mapper.table.Table;

/**
 * Tables in a database file of their own, in this process: nothing is sent anywhere, and what does
 * not fit into memory waits on disk.
 */
public final class TableStore implements AutoCloseable {

  /** Ample for the rows of a group, every cell filled; the rest of a pool lies on disk. */
  private static final String MEMORY = "800MB";

  /** Filled columns beyond which the rows of a group are few: the writer holds all their cells. */
  private static final int WIDE = 400;

  private static final int WIDE_GROUP = 2048;

  private static final String POOL = "pool";
  private static final String SHARED = "shared";

  /**
   * Bytes of a block and rows that are laid down together: few, for each of the hundreds of columns
   * of the wide table holds on to a block while its rows come in.
   */
  private static final int BLOCK = 16_384;

  private static final int GROUP = 8_192;

  private final DuckDBConnection connection;

  private final Optional<Path> own;

  private TableStore(DuckDBConnection connection, Optional<Path> own) {
    this.connection = connection;
    this.own = own;
  }

  /**
   * Opens a database in a file, which is made where there is none.
   *
   * @throws SQLException when the database refuses it, for instance for a full disk
   */
  public static TableStore at(Path file) throws SQLException {
    TableStore store = open(file.resolveSibling("spilled"), new Properties(), Optional.empty());
    store.attach(file, POOL);
    store.execute("USE " + POOL);
    return store;
  }

  private void attach(Path file, String name) throws SQLException {
    execute(
        "ATTACH %s AS %s (BLOCK_SIZE %d, ROW_GROUP_SIZE %d)"
            .formatted(text(file.toString()), name, BLOCK, GROUP));
  }

  /**
   * Begins a database in another file, with the tables that are there: a file that holds nothing
   * else, not even what was deleted.
   *
   * @throws SQLException when the database refuses it, for instance for a full disk
   */
  public void share(Path file) throws SQLException {
    attach(file, SHARED);
    execute("COPY FROM DATABASE " + POOL + " TO " + SHARED);
  }

  /** Puts the rows of a question into a table of the database in the other file. */
  void shareRows(String table, String from) throws SQLException {
    execute("CREATE TABLE " + SHARED + "." + name(table) + " AS FROM " + from);
  }

  /**
   * Opens a database that is gone when it is closed.
   *
   * @throws SQLException when the database refuses it, for instance for a full disk
   */
  public static TableStore inMemory() throws SQLException {
    return passing(new Properties());
  }

  /** Opens such a database, which makes the rows of an answer as they are read. */
  static TableStore streaming() throws SQLException {
    Properties streaming = new Properties();
    streaming.setProperty(DuckDBDriver.JDBC_STREAM_RESULTS, "true");
    return passing(streaming);
  }

  /** What does not fit into memory may name persons: it lies in a folder of its owner alone. */
  private static TableStore passing(Properties properties) throws SQLException {
    try {
      Path own = Passing.add(Files.createTempDirectory("isopter-spilled"));
      return open(own, properties, Optional.of(own));
    } catch (IOException failed) {
      throw new SQLException("no folder for what does not fit into memory", failed);
    }
  }

  /**
   * Opens a database that puts what does not fit into memory into a folder.
   *
   * @param own a folder that is deleted when the database is closed
   */
  private static TableStore open(Path spilled, Properties properties, Optional<Path> own)
      throws SQLException {
    TableStore store =
        new TableStore(
            (DuckDBConnection) DriverManager.getConnection("jdbc:duckdb:", properties), own);
    store.execute("SET temp_directory = " + text(spilled.toString()));
    store.execute("SET memory_limit = '" + MEMORY + "'");
    // Each of several threads holds on to rows of its own: files came no sooner and took more.
    store.execute("SET threads = 1");
    store.execute("SET enable_progress_bar = false");
    // Each question would read anew where the thousands of columns lie in the file.
    store.execute("SET parquet_metadata_cache = true");
    // The system keeps what was read of a file; kept here too, it would grow with the pool.
    store.execute("SET enable_external_file_cache = false");
    return store;
  }

  /**
   * Begins to fill tables: until it is ended, whole groups of rows go straight to their place.
   *
   * @throws SQLException when the database refuses it, for instance for a full disk
   */
  public void beginFilling() throws SQLException {
    connection.setAutoCommit(false);
  }

  /**
   * Ends to fill tables.
   *
   * @throws SQLException when the database refuses it, for instance for a full disk
   */
  public void endFilling() throws SQLException {
    connection.commit();
    connection.setAutoCommit(true);
  }

  /**
   * Writes rows to a file in Parquet, in their order.
   *
   * @param filled the columns that any row fills; at least one
   */
  void write(Table<?> table, Iterator<SparseRow> rows, BitSet filled, Path to) throws SQLException {
    String feed = "rows_of_" + table.name();
    try (DuckDBTableFunctionBuilder function = DuckDBFunctions.tableFunction()) {
      function.withName(feed).withFunction(new RowFeed(table, rows, filled)).register(connection);
    }
    execute(
        "COPY (SELECT %s FROM %s()) TO %s %s"
            .formatted(cells(table, filled), feed, text(to.toString()), parquet(filled)));
  }

  private static String cells(Table<?> table, BitSet filled) {
    List<String> cells = new ArrayList<>();
    for (int i = 0; i < table.columns().size(); i++) {
      Column<?> column = table.columns().get(i);
      String name = name(column.name());
      cells.add(filled.get(i) ? name : "NULL::" + type(column) + " AS " + name);
    }
    return String.join(", ", cells);
  }

  private static String parquet(BitSet filled) {
    boolean wide = filled.cardinality() > WIDE;
    return TableFormat.parquet(wide ? WIDE_GROUP : GROUP);
  }

  /**
   * Makes a view, which is gone when the database is closed, or puts it in the place of another.
   *
   * @throws SQLException when the database refuses it, for instance for a full disk
   */
  public void view(String name, String sql) throws SQLException {
    execute("CREATE OR REPLACE TEMP VIEW " + name(name) + " AS " + sql);
  }

  /** How lines of text that hold no character 1 are written and read as they are. */
  private static final String LINES = "HEADER false, QUOTE '', ESCAPE '', DELIMITER '\u0001'";

  /**
   * Writes the lines of a table of one column to a file, in an order that tells nothing.
   *
   * @throws SQLException when the database refuses it, for instance for a full disk
   */
  public void copyLines(String table, Path to) throws SQLException {
    execute(
        "COPY (SELECT line FROM %s ORDER BY md5(line)) TO %s (FORMAT csv, %s)"
            .formatted(name(table), text(to.toString()), LINES));
  }

  /**
   * Puts the lines of a file into a table of one column.
   *
   * @throws SQLException when the database refuses it, for instance for a full disk
   */
  public void loadLines(String table, Path from) throws SQLException {
    execute(
        "INSERT INTO %s FROM read_csv(%s, columns = {'line': 'VARCHAR'}, auto_detect = false, max_line_size = 8000000, header = false, quote = '', escape = '', delim = '\u0001')"
            .formatted(name(table), text(from.toString())));
  }

  /**
   * Makes a table of lines and returns what puts lines into it.
   *
   * @throws SQLException when the database refuses it, for instance for a full disk
   */
  public Appender createLines(String table) throws SQLException {
    execute("CREATE TABLE " + name(table) + " (line VARCHAR)");
    return new Appender(connection.createAppender(POOL, DuckDBConnection.DEFAULT_SCHEMA, table));
  }

  /**
   * Writes a table to a file.
   *
   * @throws SQLException when the database refuses it, for instance for a full disk
   */
  public void copy(String table, TableFormat format, Path to) throws SQLException {
    execute("COPY " + name(table) + " TO " + text(to.toString()) + " " + format.options());
  }

  /**
   * Runs one statement of SQL.
   *
   * @throws SQLException when the database refuses it, for instance for a full disk
   */
  public void execute(String sql) throws SQLException {
    try (Statement statement = connection.createStatement()) {
      statement.execute(sql);
    }
  }

  /**
   * Returns the rows of a question.
   *
   * @throws SQLException when the database refuses it, for instance for a full disk
   */
  public List<List<Optional<Object>>> ask(String sql) throws SQLException {
    return rows(sql).cells();
  }

  /** Takes a row of cells. */
  interface RowTaker {

    /** Takes the cells of a row, a cell for each column. */
    void take(List<Optional<?>> cells) throws IOException;
  }

  /** Hands on the rows of a table one by one, in their order. */
  void each(Table<?> table, RowTaker taker) throws SQLException, IOException {
    List<? extends Column<?>> columns = table.columns();
    try (Statement statement = connection.createStatement();
        ResultSet rows = statement.executeQuery("FROM " + name(table.name()))) {
      while (rows.next()) {
        List<Optional<?>> cells = new ArrayList<>(columns.size());
        for (int i = 0; i < columns.size(); i++) {
          cells.add(
              columns.get(i).kind() == Kind.TIME
                  ? Optional.ofNullable(rows.getObject(i + 1, LocalDateTime.class))
                  : Optional.ofNullable(rows.getObject(i + 1)));
        }
        taker.take(cells);
      }
    }
  }

  /**
   * Returns the columns and the rows of a question.
   *
   * @throws SQLException when the database refuses it, for instance for a full disk
   */
  public PoolTables.Rows rows(String sql) throws SQLException {
    try (Statement statement = connection.createStatement();
        ResultSet rows = statement.executeQuery(sql)) {
      List<String> columns = new ArrayList<>();
      for (int i = 1; i <= rows.getMetaData().getColumnCount(); i++) {
        columns.add(rows.getMetaData().getColumnLabel(i));
      }
      List<List<Optional<Object>>> cells = new ArrayList<>();
      while (rows.next()) {
        cells.add(row(rows, columns.size()));
      }
      return new PoolTables.Rows(columns, cells);
    }
  }

  private static List<Optional<Object>> row(ResultSet rows, int width) throws SQLException {
    List<Optional<Object>> row = new ArrayList<>();
    for (int i = 1; i <= width; i++) {
      row.add(Optional.ofNullable(rows.getObject(i)));
    }
    return row;
  }

  /** Returns a name as SQL quotes it. */
  public static String name(String plain) {
    return '"' + plain.replace("\"", "\"\"") + '"';
  }

  /** Returns a text as SQL quotes it. */
  public static String text(String plain) {
    return '\'' + plain.replace("'", "''") + '\'';
  }

  /** Returns the type of a column in SQL. */
  public static String type(Column<?> column) {
    return RowFeed.type(column.kind()).name();
  }

  @Override
  public void close() throws SQLException {
    connection.close();
    if (own.isPresent()) {
      try {
        Passing.delete(own.get());
      } catch (IOException failed) {
        throw new SQLException("what did not fit into memory could not be deleted", failed);
      }
    }
  }
}
