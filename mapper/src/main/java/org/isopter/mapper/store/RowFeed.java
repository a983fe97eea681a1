package org.isopter.mapper.store;

import java.time.LocalDateTime;
import java.util.Arrays;
import java.util.BitSet;
import java.util.Iterator;
import org.duckdb.DuckDBColumnType;
import org.duckdb.DuckDBDataChunkWriter;
import org.duckdb.DuckDBTableFunction;
import org.duckdb.DuckDBTableFunctionBindInfo;
import org.duckdb.DuckDBTableFunctionCallInfo;
import org.duckdb.DuckDBTableFunctionInitInfo;
import org.duckdb.DuckDBWritableVector;
import org.isopter.mapper.table.Column;
import org.isopter.mapper.table.Kind;
import org.isopter.mapper.table.SparseRow;
import org.isopter.mapper.table.Table;
import org.jspecify.annotations.Nullable;

/**
 * Hands rows to the database a column at a time, when it asks for them. Columns that no row fills
 * are not handed over: the wide table has a thousand of them, and each empty cell would be a call.
 */
final class RowFeed implements DuckDBTableFunction<Table<?>, Object, Object> {

  private final Table<?> table;
  private final Iterator<SparseRow> rows;

  /** The columns that are handed over. */
  private final int[] columns;

  /** The place of each column of the table among them. */
  private final int[] places;

  /** The cells of the rows that are handed over, by column; all empty between two times. */
  private @Nullable Object[][] cells = new Object[0][0];

  /**
   * Makes one.
   *
   * @param filled the columns that any row fills; at least one
   */
  RowFeed(Table<?> table, Iterator<SparseRow> rows, BitSet filled) {
    this.table = table;
    this.rows = rows;
    this.columns = filled.stream().toArray();
    this.places = new int[table.columns().size()];
    for (int i = 0; i < columns.length; i++) {
      places[columns[i]] = i;
    }
  }

  @Override
  public Table<?> bind(DuckDBTableFunctionBindInfo info) {
    for (int at : columns) {
      Column<?> column = table.columns().get(at);
      info.addResultColumn(column.name(), type(column.kind()));
    }
    return table;
  }

  /** Returns the type of the cells of a kind; its name is that of SQL. */
  static DuckDBColumnType type(Kind kind) {
    return switch (kind) {
      case TEXT -> DuckDBColumnType.VARCHAR;
      case NUMBER -> DuckDBColumnType.DOUBLE;
      case INTEGER -> DuckDBColumnType.BIGINT;
      case TRUTH -> DuckDBColumnType.BOOLEAN;
      case TIME -> DuckDBColumnType.TIMESTAMP;
    };
  }

  @Override
  public Object init(DuckDBTableFunctionInitInfo info) {
    info.setMaxThreads(1);
    return rows;
  }

  @Override
  public long apply(DuckDBTableFunctionCallInfo info, DuckDBDataChunkWriter chunk) {
    int most = (int) chunk.capacity();
    if (cells.length == 0) {
      cells = new Object[columns.length][most];
    }
    int count = 0;
    while (count < most && rows.hasNext()) {
      SparseRow row = rows.next();
      for (int i = 0; i < row.columns().length; i++) {
        cells[places[row.columns()[i]]][count] = row.values()[i];
      }
      count++;
    }
    for (int i = 0; i < cells.length && count > 0; i++) {
      fill(chunk.vector(i), table.columns().get(columns[i]).kind(), cells[i], count);
      Arrays.fill(cells[i], 0, count, null);
    }
    return count;
  }

  private static void fill(
      DuckDBWritableVector vector, Kind kind, @Nullable Object[] values, int count) {
    if (kind == Kind.TEXT && Arrays.stream(values, 0, count).anyMatch(value -> value != null)) {
      vector.setStringUtf8Batch(0, bytes(values, count));
      return;
    }
    for (int i = 0; i < count; i++) {
      Object value = values[i];
      if (value == null) {
        vector.setNull(i);
      } else if (value instanceof Double number) {
        vector.setDouble(i, number);
      } else if (value instanceof Long number) {
        vector.setLong(i, number);
      } else if (value instanceof Boolean truth) {
        vector.setBoolean(i, truth);
      } else if (value instanceof LocalDateTime time) {
        vector.setTimestamp(i, time);
      }
    }
  }

  /** Texts of neighbours are often one and the same. */
  private static byte[][] bytes(@Nullable Object[] values, int count) {
    byte[][] texts = new byte[count][];
    for (int i = 0; i < count; i++) {
      Object value = values[i];
      if (value != null) {
        texts[i] = i > 0 && value == values[i - 1] ? texts[i - 1] : PackedText.bytes(value);
      }
    }
    return texts;
  }
}
