package org.isopter.model.clinical;

import java.util.Map;
import java.util.Optional;

/**
 * One row of a table of check values.
 *
 * @param table the table
 * @param line the line in its file
 * @param name the first cell, which names the row
 * @param cells every cell by its column
 */
public record CheckRow(String table, int line, String name, Map<String, String> cells) {

  /** Returns a cell as it stands; empty when the table leaves it blank. */
  public String cell(String column) {
    return Optional.ofNullable(cells.get(column))
        .orElseThrow(() -> new AssertionError(table + " has no column " + column));
  }

  /** Returns a cell as a number. */
  public double number(String column) {
    return Double.parseDouble(cell(column));
  }

  /** Says whether the table leaves the cell blank. */
  public boolean isBlank(String column) {
    return cell(column).isBlank();
  }

  @Override
  public String toString() {
    return table + ":" + line + " " + name;
  }
}
