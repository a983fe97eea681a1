package org.isopter.mapper.describe;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

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

  /**
   * Returns an answer without the column that says how many persons are behind a row.
   *
   * @param sayings what each of its columns says
   * @throws IllegalArgumentException when they are not those of the answer
   */
  Listing of(Listing answer, List<Saying> sayings) {
    int behind = sayings.indexOf(Saying.BEHIND);
    if (sayings.size() != answer.columns().size() || behind != sayings.size() - 1) {
      throw new IllegalArgumentException("the columns " + answer.columns() + " say " + sayings);
    }
    List<List<String>> rows = new ArrayList<>();
    for (List<String> row : answer.rows()) {
      if (!isCoarse()) {
        rows.add(row.subList(0, behind));
      } else if (Long.parseLong(row.get(behind)) >= fewest) {
        rows.add(cells(row.subList(0, behind), sayings, Long.parseLong(row.get(behind))));
      }
    }
    List<String> columns = answer.columns().subList(0, behind);
    return new Listing(answer.title(), answer.remark(), columns, rows);
  }

  private List<String> cells(List<String> row, List<Saying> sayings, long behind) {
    List<String> cells = new ArrayList<>();
    for (int i = 0; i < row.size(); i++) {
      cells.add(cell(row.get(i), sayings.get(i), behind));
    }
    return cells;
  }

  /** A number between the numbers of few persons is one of theirs, or tells it. */
  private String cell(String cell, Saying saying, long behind) {
    return switch (saying) {
      case WORD, SHARED -> cell;
      case MIDDLE -> behind >= 2L * fewest ? cell : "";
      case QUARTER -> behind >= 4L * fewest ? cell : "";
      case COUNT -> Long.toString(rounded(Long.parseLong(cell)));
      case OF_ONE, BEHIND -> "";
    };
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
