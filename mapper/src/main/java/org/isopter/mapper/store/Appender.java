package org.isopter.mapper.store;

import java.sql.SQLException;
import org.duckdb.DuckDBAppender;

/** Puts lines into one table of a store. */
public final class Appender implements AutoCloseable {

  /** Lines that wait before they are handed over: one vector of the database. */
  private static final int PORTION = 2_048;

  private final DuckDBAppender appender;
  private int waiting;
  private boolean closed;

  Appender(DuckDBAppender appender) {
    this.appender = appender;
  }

  /**
   * Adds a line.
   *
   * @throws SQLException when the database refuses it, for instance for a full disk
   */
  public void add(String line) throws SQLException {
    appender.beginRow();
    appender.append(line);
    appender.endRow();
    if (++waiting >= PORTION) {
      appender.flush();
      waiting = 0;
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
