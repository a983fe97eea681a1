package org.isopter.mapper.describe;

import java.util.List;

/**
 * Classes of equal width over numbers, their count by the rule of Sturges (1926), at most thirty.
 * Where numbers are recorded in steps, such as half a dioptre, a class holds whole steps: otherwise
 * some would hold more of them than others, and show teeth that are none.
 *
 * @param least where the first begins
 * @param width how wide each is
 * @param count how many there are
 */
record Classes(double least, double width, int count) {

  private static final int MOST = 30;
  private static final double THOUSAND = 1_000;

  /** Numbers that are computed, such as logMAR of fractions, have no steps. */
  private static final double FINEST = 0.0045;

  private static final double ROUNDING = 1e-9;

  static Classes of(Spread spread) {
    List<Double> all = spread.byEye().values().stream().flatMap(List::stream).toList();
    double least = all.stream().mapToDouble(Double::doubleValue).min().orElse(0);
    double most = all.stream().mapToDouble(Double::doubleValue).max().orElse(1);
    int count =
        (int) Math.min(MOST, 1 + Math.ceil(Math.log(Math.max(1, all.size())) / Math.log(2)));
    double width = most > least ? (most - least) / count : 1;
    double step = step(all, least);
    if (step <= FINEST || most <= least) {
      return new Classes(least, width, count);
    }
    double whole = Math.max(1, Math.ceil(width / step - ROUNDING)) * step;
    int needed = (int) Math.ceil((most - least + step) / whole - ROUNDING);
    return new Classes(least - step / 2, whole, needed);
  }

  /** Returns the greatest step, to a thousandth, that all numbers are whole steps apart by. */
  private static double step(List<Double> all, double least) {
    long step = 0;
    for (double number : all) {
      step = greatest(step, Math.round((number - least) * THOUSAND));
    }
    return step / THOUSAND;
  }

  private static long greatest(long one, long other) {
    return other == 0 ? one : greatest(other, one % other);
  }

  /** Returns where a class begins. */
  double start(int number) {
    return least + number * width;
  }

  /** Returns the share of the numbers in each class; they sum to one. */
  double[] shares(List<Double> numbers) {
    double[] shares = new double[count];
    for (double number : numbers) {
      int at = (int) Math.min(count - 1, Math.max(0, Math.floor((number - least) / width)));
      shares[at] += 1.0 / numbers.size();
    }
    return shares;
  }
}
