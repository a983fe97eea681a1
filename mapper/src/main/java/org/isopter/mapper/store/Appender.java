package org.isopter.mapper.store;

import java.sql.SQLException;
import java.time.LocalDateTime;
import java.util.List;
import java.util.Optional;
import org.duckdb.DuckDBAppender;

/** Puts rows into one table of a store. */
public final class Appender implements AutoCloseable {

  /** Rows that wait before they are handed over: one vector of the database. */
  private static final int PORTION = 2_048;

  private final DuckDBAppender appender;
  private int waiting;
  private boolean closed;

  Appender(DuckDBAppender appender) {
    this.appender = appender;
  }

  /**
   * Adds a row, a cell for each column; an empty cell is null in the table.
   *
   * @throws SQLException when the database refuses it, for instance for a full disk
   */
  public void add(List<Optional<?>> cells) throws SQLException {
    appender.beginRow();
    for (Optional<?> cell : cells) {
      append(cell);
    }
    appender.endRow();
    if (++waiting >= PORTION) {
      appender.flush();
      waiting = 0;
    }
  }

  private void append(Optional<?> cell) throws SQLException {
    if (cell.isEmpty()) {
      appender.appendNull();
    } else if (cell.get() instanceof String text) {
      appender.append(text);
    } else if (cell.get() instanceof Double number) {
      appender.append(number.doubleValue());
    } else if (cell.get() instanceof Long number) {
      appender.append(number.longValue());
    } else if (cell.get() instanceof Boolean truth) {
      appender.append(truth.booleanValue());
    } else if (cell.get() instanceof LocalDateTime time) {
      appender.append(time);
    } else {
      throw new IllegalArgumentException("no column holds a " + cell.get().getClass());
    }
  }

  @Override
  public void close() throws SQLException {
    if (!closed) {
      closed = true;
      appender.close();
    }
  }
}
