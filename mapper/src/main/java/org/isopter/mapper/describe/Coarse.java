package org.isopter.mapper.describe;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Set;

/**
 * Takes out of a description what is said of few persons: rows that fewer are behind, the least and
 * the greatest number, which are one person's, and numbers far out. Every count is rounded by
 * itself to a multiple of that number, totals too, so that no difference of two gives a smaller one
 * back.
 *
 * @param fewest the fewest persons of whom something may be said; 1 leaves everything as it is
 */
public record Coarse(int fewest) {

  /** Leaves everything as it is. */
  public static final Coarse NOT = new Coarse(1);

  private static final Set<String> COUNTS =
      Set.of(
          "persons",
          "examinations",
          "facts",
          "derived statements",
          "rows of findings",
          "replaced",
          "more than once",
          "right",
          "left",
          "both",
          "found",
          "no value",
          "times",
          "examined",
          "not examined",
          "not recorded",
          "with number",
          "without",
          "n");

  private static final Set<String> SINGLE = Set.of("least", "most");

  /**
   * Makes one.
   *
   * @throws IllegalArgumentException when the fewest are none
   */
  public Coarse {
    if (fewest < 1) {
      throw new IllegalArgumentException("of fewer than one person nothing can be said");
    }
  }

  boolean isCoarse() {
    return fewest > 1;
  }

  /** Returns a table of counts without its last column, which says how many are behind a row. */
  Listing of(Listing listing) {
    List<String> columns = listing.columns().subList(0, listing.columns().size() - 1);
    List<List<String>> rows = new ArrayList<>();
    for (List<String> row : listing.rows()) {
      if (Long.parseLong(row.get(columns.size())) >= fewest || !isCoarse()) {
        rows.add(cells(columns, row));
      }
    }
    return new Listing(listing.title(), listing.remark(), columns, rows);
  }

  private List<String> cells(List<String> columns, List<String> row) {
    List<String> cells = new ArrayList<>();
    for (int i = 0; i < columns.size(); i++) {
      cells.add(isCoarse() ? cell(columns.get(i), row.get(i)) : row.get(i));
    }
    return cells;
  }

  private String cell(String column, String cell) {
    if (SINGLE.contains(column)) {
      return "";
    }
    return COUNTS.contains(column) ? Long.toString(rounded(Long.parseLong(cell))) : cell;
  }

  /** Returns a count that may be said; empty where too few persons are behind it. */
  Optional<Long> count(long count, long behind) {
    return isCoarse()
        ? Optional.of(count).filter(any -> behind >= fewest).map(this::rounded)
        : Optional.of(count);
  }

  private long rounded(long count) {
    return (2 * count + fewest) / (2L * fewest) * fewest;
  }
}
