package org.isopter.mapper.table;

import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.function.Predicate;

/**
 * A table: its name and its columns.
 *
 * @param name the name, in lower case
 * @param columns the columns, in their order
 * @param blocks all columns, by those that are empty together
 * @param <R> what a row is made of
 */
public record Table<R>(String name, List<Column<R>> columns, List<Block<R>> blocks) {

  /**
   * Columns that are empty together: where a row has none of them, none of them is asked for.
   *
   * @param from the first column, from 0
   * @param to the column after the last
   * @param filled says whether a row has any of them
   * @param <R> what a row is made of
   */
  public record Block<R>(int from, int to, Predicate<R> filled) {}

  /**
   * Makes a table.
   *
   * @throws IllegalArgumentException when two columns have one name
   */
  public Table {
    columns = List.copyOf(columns);
    blocks = List.copyOf(blocks);
    Set<String> names = new HashSet<>();
    for (Column<R> column : columns) {
      if (!names.add(column.name())) {
        throw new IllegalArgumentException(name + " has two columns called " + column.name());
      }
    }
  }

  /** Makes a table whose columns are all asked for in every row. */
  public Table(String name, List<Column<R>> columns) {
    this(name, columns, List.of(new Block<>(0, columns.size(), any -> true)));
  }

  /** Returns the cells of a row, in the order of the columns. */
  public List<Optional<?>> cells(R row) {
    return sparse(row).cells(columns.size());
  }

  /** Returns the cells of a row that are not empty. */
  public SparseRow sparse(R row) {
    SparseRow.Making making = new SparseRow.Making();
    for (Block<R> block : blocks) {
      if (block.filled().test(row)) {
        for (int i = block.from(); i < block.to(); i++) {
          making.put(i, columns.get(i).cell().apply(row));
        }
      }
    }
    return making.row();
  }
}
