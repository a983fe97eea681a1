package org.isopter.mapper.table;

import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;

/**
 * A table: its name and its columns.
 *
 * @param name the name, in lower case
 * @param columns the columns, in their order
 * @param <R> what a row is made of
 */
public record Table<R>(String name, List<Column<R>> columns) {

  /**
   * Makes a table.
   *
   * @throws IllegalArgumentException when two columns have one name
   */
  public Table {
    columns = List.copyOf(columns);
    Set<String> names = new HashSet<>();
    for (Column<R> column : columns) {
      if (!names.add(column.name())) {
        throw new IllegalArgumentException(name + " has two columns called " + column.name());
      }
    }
  }

  /** Returns the cells of a row, in the order of the columns. */
  public List<Optional<?>> cells(R row) {
    List<Optional<?>> cells = new ArrayList<>(columns.size());
    for (Column<R> column : columns) {
      cells.add(column.cell().apply(row));
    }
    return cells;
  }
}
