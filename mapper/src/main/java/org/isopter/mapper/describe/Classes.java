package org.isopter.mapper.describe;

import java.util.List;

/**
 * Classes of equal width over numbers, their count by the rule of Sturges (1926), at most thirty.
 *
 * @param least where the first begins
 * @param width how wide each is
 * @param count how many there are
 */
record Classes(double least, double width, int count) {

  private static final int MOST = 30;

  static Classes of(Spread spread) {
    List<Double> all = spread.byEye().values().stream().flatMap(List::stream).toList();
    double least = all.stream().mapToDouble(Double::doubleValue).min().orElse(0);
    double most = all.stream().mapToDouble(Double::doubleValue).max().orElse(1);
    int count =
        (int) Math.min(MOST, 1 + Math.ceil(Math.log(Math.max(1, all.size())) / Math.log(2)));
    double width = most > least ? (most - least) / count : 1;
    return new Classes(least, width, count);
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
