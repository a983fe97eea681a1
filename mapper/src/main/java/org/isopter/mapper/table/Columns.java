package org.isopter.mapper.table;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.function.Function;
import org.isopter.model.value.Concept;

/**
 * Columns in the making.
 *
 * @param <R> what a row is made of
 */
final class Columns<R> {

  private final List<Column<R>> columns = new ArrayList<>();

  /** Adds a column of text that no row is without. */
  Columns<R> text(String name, String meaning, Function<R, String> cell) {
    return add(name, Kind.TEXT, meaning, row -> Optional.of(cell.apply(row)));
  }

  /** Adds a column. */
  Columns<R> add(String name, Kind kind, String meaning, Function<R, Optional<?>> cell) {
    columns.add(new Column<>(name, kind, meaning, Optional.empty(), List.of(), cell));
    return this;
  }

  /** Adds columns that are made. */
  Columns<R> addAll(List<Column<R>> made) {
    columns.addAll(made);
    return this;
  }

  /** Says that the cells of the last column are words of a list. */
  Columns<R> oneOf(Concept... list) {
    int last = columns.size() - 1;
    columns.set(last, columns.get(last).oneOf(List.of(list)));
    return this;
  }

  List<Column<R>> list() {
    return columns;
  }
}
