package org.isopter.mapper.describe;

import java.util.List;

/**
 * A small table of a description.
 *
 * @param title what it is about
 * @param remark what a reader must know of it; empty where nothing
 * @param columns the headings
 * @param rows the cells of each row, in the order of the headings; a missing cell is empty
 */
public record Listing(String title, String remark, List<String> columns, List<List<String>> rows) {

  public Listing {
    columns = List.copyOf(columns);
    rows = rows.stream().map(List::copyOf).toList();
  }

  /** Says whether all cells of a column are numbers. */
  boolean isNumber(int column) {
    return rows.stream()
        .map(row -> row.get(column))
        .filter(cell -> !cell.isEmpty())
        .allMatch(cell -> cell.matches("-?[0-9.]+"));
  }
}
