package org.isopter.spark;

import java.util.Comparator;
import java.util.List;
import java.util.function.Function;
import java.util.regex.Pattern;
import org.apache.spark.api.java.JavaRDD;
import org.apache.spark.sql.Row;
import org.isopter.mapper.pool.PoolPlan;
import scala.Tuple2;

/**
 * The groups of persons who share their usual traits with too few others, counted on a cluster: the
 * lines of {@link org.isopter.mapper.privacy.SmallCells}.
 */
final class SmallGroups {

  static final String FILE = "small-cells.csv";

  private static final Pattern COMMA = Pattern.compile(",");

  /** By each trait in turn, numbers by their size and what is not known last. */
  private static final Comparator<String> ORDER =
      (one, other) -> {
        String[] first = COMMA.split(one, -1);
        String[] second = COMMA.split(other, -1);
        for (int i = 0; i < first.length; i++) {
          int order = cell(first[i], second[i]);
          if (order != 0) {
            return order;
          }
        }
        return 0;
      };

  private SmallGroups() {}

  /** Returns a line for each group: its traits and how many persons it has. */
  static List<String> of(JavaRDD<LaidOut> laid) {
    return laid
        .flatMap(each -> each.eyes().iterator())
        .mapToPair(SmallGroups::member)
        .distinct()
        .mapToPair(member -> new Tuple2<>(member._1(), 1L))
        .reduceByKey(Long::sum)
        .filter(group -> group._2() < PoolPlan.USUAL_SMALLEST)
        .collect()
        .stream()
        .sorted(Comparator.comparing((Function<Tuple2<String, Long>, String>) Tuple2::_1, ORDER))
        .map(group -> group._1() + "," + group._2())
        .toList();
  }

  /** Returns the groups as CSV; none of the usual traits holds a comma. */
  static String csv(List<String> groups) {
    StringBuilder text = new StringBuilder(String.join(",", PoolPlan.USUAL_TRAITS));
    text.append(",persons\n");
    groups.forEach(group -> text.append(group).append('\n'));
    return text.toString();
  }

  private static Tuple2<String, String> member(Row row) {
    return new Tuple2<>(String.join(",", Known.traits(row)), Known.person(row));
  }

  private static int cell(String one, String other) {
    if (one.isEmpty() || other.isEmpty()) {
      return Boolean.compare(one.isEmpty(), other.isEmpty());
    }
    return Character.isDigit(one.charAt(0))
        ? Long.compare(Long.parseLong(one), Long.parseLong(other))
        : one.compareTo(other);
  }
}
