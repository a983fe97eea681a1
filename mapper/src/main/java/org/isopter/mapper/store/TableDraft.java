package org.isopter.mapper.store;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.sql.SQLException;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.BitSet;
import java.util.List;
import java.util.Optional;
import org.isopter.mapper.table.SparseRow;
import org.isopter.mapper.table.Table;

/**
 * A table of a pool in the making. Its rows wait on disk; then they are written in their order to
 * one Parquet file, and whatever asks for them in SQL reads that file.
 */
public final class TableDraft implements AutoCloseable {

  /**
   * What the name of the view of all rows begins with. The view under the name of the table alone
   * may be made to show fewer.
   */
  public static final String ALL = "all_";

  private final Table<?> table;
  private final RowOrder order;
  private final WaitingRows waiting;
  private final TableStore store;

  /** Whether any row fills a column; threads that pack do nothing but set it. */
  private final boolean[] filled;

  private Path file;

  private TableDraft(
      Table<?> table, RowOrder order, WaitingRows waiting, TableStore store, Path file) {
    this.table = table;
    this.order = order;
    this.waiting = waiting;
    this.store = store;
    this.filled = new boolean[table.columns().size()];
    this.file = file;
  }

  /**
   * Begins a table whose files lie in a folder until they are complete.
   *
   * @throws IOException when a file cannot be written, for instance for a full disk
   */
  public static TableDraft begin(Table<?> table, TableStore store, Path folder) throws IOException {
    RowOrder order = new RowOrder(table);
    WaitingRows waiting = new WaitingRows(order, folder.resolve(table.name() + ".waiting"));
    return new TableDraft(table, order, waiting, store, folder.resolve(table.name() + ".draft"));
  }

  /**
   * Packs the rows of one examination, without adding them; several threads may do so at once.
   *
   * @param rows the rows; all of one person and examination
   */
  public Optional<PackedRows> pack(List<SparseRow> rows) {
    for (SparseRow row : rows) {
      for (int column : row.columns()) {
        filled[column] = true;
      }
    }
    return rows.isEmpty() ? Optional.empty() : Optional.of(PackedRows.of(order, rows));
  }

  /**
   * Adds the rows of one examination.
   *
   * @throws IOException when a file cannot be written, for instance for a full disk
   */
  public void add(PackedRows rows) throws IOException {
    waiting.add(rows);
  }

  /**
   * Adds the rows of an older pool.
   *
   * @throws org.isopter.model.value.FaultException when the table is not there
   * @throws IOException when a file cannot be read or written
   * @throws SQLException when the database cannot read the table
   */
  public void addOlder(Path pool) throws IOException, SQLException {
    try (TableStore older = TableStore.streaming()) {
      List<SparseRow> together = new ArrayList<>();
      PoolTables.file(pool, table).open(older);
      older.each(table, cells -> take(SparseRow.of(cells), together));
      addTogether(together);
    }
  }

  /** Rows of one examination stand together in a pool. */
  private void take(SparseRow row, List<SparseRow> together) throws IOException {
    if (!together.isEmpty() && !Arrays.equals(order.key(together.get(0)), order.key(row))) {
      addTogether(together);
      together.clear();
    }
    together.add(row);
  }

  private void addTogether(List<SparseRow> rows) throws IOException {
    Optional<PackedRows> packed = pack(rows);
    if (packed.isPresent()) {
      add(packed.get());
    }
  }

  /**
   * Writes the rows down, for questions in SQL under the name of the table.
   *
   * @throws SQLException when the database refuses it, for instance for a full disk
   * @throws IOException when a file cannot be written, for instance for a full disk
   */
  public void write() throws SQLException, IOException {
    BitSet columns = filled();
    if (columns.isEmpty()) {
      columns.set(0, filled.length);
    }
    store.write(table, waiting.sorted(), columns, file);
    waiting.close();
    show();
  }

  Table<?> table() {
    return table;
  }

  /** Returns the columns that any row fills. */
  BitSet filled() {
    BitSet columns = new BitSet();
    for (int i = 0; i < filled.length; i++) {
      columns.set(i, filled[i]);
    }
    return columns;
  }

  private void show() throws SQLException {
    store.view(ALL + table.name(), "FROM " + rows());
    store.view(table.name(), "FROM " + rows());
  }

  /**
   * Writes down what the view of the table shows, where it shows less than the file holds.
   *
   * @throws SQLException when the database refuses it, for instance for a full disk
   * @throws IOException when a file cannot be written, for instance for a full disk
   */
  public void settle() throws SQLException, IOException {
    Path other = file.resolveSibling(table.name() + ".settled");
    store.copy(table.name(), TableFormat.PARQUET, other);
    Files.delete(file);
    file = other;
    show();
  }

  /** Returns the rows that were written down, in SQL. */
  private String rows() {
    return "read_parquet(" + TableStore.text(file.toString()) + ")";
  }

  /** Writes the table into a folder, in a format other than Parquet. */
  private void copy(TableFormat format, Path folder) throws SQLException {
    store.copy(table.name(), format, folder.resolve(table.name() + "." + format.ending()));
  }

  /**
   * Gives the files of the table their names; then there is nothing left to ask.
   *
   * @param database whether the rows are put into the database that is left, too
   * @throws SQLException when the database refuses it, for instance for a full disk
   * @throws IOException when a file cannot be written, for instance for a full disk
   */
  public void finish(List<TableFormat> formats, boolean database, Path folder)
      throws SQLException, IOException {
    for (TableFormat format : formats) {
      if (format != TableFormat.PARQUET) {
        copy(format, folder);
      }
    }
    store.execute("DROP VIEW " + table.name());
    if (database) {
      store.shareRows(table.name(), rows());
    }
    if (formats.contains(TableFormat.PARQUET)) {
      Files.move(file, folder.resolve(table.name() + "." + TableFormat.PARQUET.ending()));
    } else {
      Files.delete(file);
    }
  }

  @Override
  public void close() throws IOException {
    waiting.close();
  }
}
