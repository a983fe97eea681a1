package org.isopter.model.clinical.statement;

import java.util.List;
import java.util.function.BiFunction;

/**
 * Which rows of a published table fit the facts: one, several or none. It never chooses among
 * several.
 *
 * @param <T> what a row of the table stands for
 */
public sealed interface Fit<T> {

  /** One row fits. */
  record Fits<T>(T one, Statement statement) implements Fit<T> {
    @Override
    public List<T> all() {
      return List.of(one);
    }
  }

  /** Several rows fit, in the order of the table; the order is no order of likelihood. */
  record SeveralFit<T>(List<T> all, Statement statement) implements Fit<T> {
    /**
     * Makes a fit of several rows.
     *
     * @throws IllegalArgumentException when there are fewer than two
     */
    public SeveralFit {
      all = List.copyOf(all);
      if (all.size() < 2) {
        throw new IllegalArgumentException("several are at least two");
      }
    }
  }

  /** No single row fits. */
  record NoneFits<T>(Statement statement) implements Fit<T> {
    @Override
    public List<T> all() {
      return List.of();
    }
  }

  /** Returns the rows that fit. */
  List<T> all();

  /** Returns what is said. */
  Statement statement();

  /**
   * Returns the fit of any number of rows; the statement is made for the certainty that results.
   */
  static <T> Fit<T> of(List<T> rows, BiFunction<Certainty, List<T>, Statement> say) {
    if (rows.isEmpty()) {
      return new NoneFits<>(say.apply(Certainty.NONE_FITS, rows));
    }
    return rows.size() == 1
        ? new Fits<>(rows.get(0), say.apply(Certainty.ONE_FITS, rows))
        : new SeveralFit<>(rows, say.apply(Certainty.SEVERAL_FIT, rows));
  }
}
