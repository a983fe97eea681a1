package org.isopter.mapper.store;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;

/**
 * A row of a table by its cells that are not empty: few of the columns of the wide table are
 * filled.
 */
final class SparseRow {

  private final int[] columns;
  private final Object[] values;

  /**
   * Holds the cells of a row.
   *
   * @param columns the numbers of the columns, from 0, ascending
   * @param values their values, as {@link org.isopter.mapper.table.Kind} says
   */
  SparseRow(int[] columns, Object[] values) {
    this.columns = columns;
    this.values = values;
  }

  int[] columns() {
    return columns;
  }

  Object[] values() {
    return values;
  }

  static SparseRow of(List<Optional<?>> cells) {
    int[] columns = new int[cells.size()];
    List<Object> values = new ArrayList<>();
    for (int i = 0; i < columns.length; i++) {
      Optional<?> cell = cells.get(i);
      if (cell.isPresent()) {
        columns[values.size()] = i;
        values.add(cell.get());
      }
    }
    return new SparseRow(Arrays.copyOf(columns, values.size()), values.toArray());
  }

  /** Returns the cell of a column as a text; empty where it is empty. */
  Optional<String> text(int column) {
    int at = Arrays.binarySearch(columns, column);
    return at < 0 ? Optional.empty() : Optional.of(values[at].toString());
  }
}
