package org.isopter.mapper.table;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Collections;
import java.util.List;
import java.util.Optional;

/**
 * A row of a table by its cells that are not empty: few of the columns of the wide table are
 * filled.
 */
public final class SparseRow {

  private final int[] columns;
  private final Object[] values;

  /**
   * Holds the cells of a row.
   *
   * @param columns the numbers of the columns, from 0, ascending
   * @param values their values, as {@link Kind} says
   */
  public SparseRow(int[] columns, Object[] values) {
    this.columns = columns;
    this.values = values;
  }

  /** Returns a row of cells, one for each column. */
  public static SparseRow of(List<Optional<?>> cells) {
    Making making = new Making();
    for (int i = 0; i < cells.size(); i++) {
      making.put(i, cells.get(i));
    }
    return making.row();
  }

  /** Returns the numbers of the columns, from 0, ascending; not to be changed. */
  public int[] columns() {
    return columns;
  }

  /** Returns the values of these columns; not to be changed. */
  public Object[] values() {
    return values;
  }

  /** Returns the cells of so many columns. */
  public List<Optional<?>> cells(int width) {
    List<Optional<?>> cells = new ArrayList<>(Collections.nCopies(width, Optional.empty()));
    for (int i = 0; i < columns.length; i++) {
      cells.set(columns[i], Optional.of(values[i]));
    }
    return cells;
  }

  /** Returns the cell of a column as a text; empty where it is empty. */
  public Optional<String> text(int column) {
    int at = Arrays.binarySearch(columns, column);
    return at < 0 ? Optional.empty() : Optional.of(values[at].toString());
  }

  /** A row in the making, column by column. */
  static final class Making {

    private int[] columns = new int[64];
    private Object[] values = new Object[64];
    private int count;

    void put(int column, Optional<?> cell) {
      if (cell.isPresent()) {
        if (count == columns.length) {
          columns = Arrays.copyOf(columns, 2 * count);
          values = Arrays.copyOf(values, 2 * count);
        }
        columns[count] = column;
        values[count] = cell.get();
        count++;
      }
    }

    SparseRow row() {
      return new SparseRow(Arrays.copyOf(columns, count), Arrays.copyOf(values, count));
    }
  }
}
