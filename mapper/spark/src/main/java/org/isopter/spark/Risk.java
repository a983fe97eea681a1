package org.isopter.spark;

import java.io.Serializable;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.Iterator;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.stream.Stream;
import org.apache.spark.api.java.JavaRDD;
import org.isopter.mapper.pool.PoolPlan;
import org.isopter.mapper.privacy.RiskReport;
import scala.Tuple2;

/**
 * How many persons are alike in what they might be known by, counted on a cluster: the lines of
 * {@link RiskReport} for the usual traits.
 */
final class Risk {

  private static final String HEAD =
      "measure,traits,finding,least,groups,persons,persons_in_small_groups";

  private static final String ALL = String.join(" ", PoolPlan.USUAL_TRAITS);

  private Risk() {}

  /** Returns the report on what was laid out, as CSV. */
  static String of(JavaRDD<LaidOut> laid) {
    Map<Integer, Line> lines =
        laid.flatMapToPair(Risk::known)
            .reduceByKey(Known::plus)
            .values()
            .flatMapToPair(person -> groups(person).iterator())
            .reduceByKey(Group::plus)
            .mapToPair(group -> new Tuple2<>(group._1()._1(), Line.of(group._1()._1(), group._2())))
            .reduceByKey(Line::plus)
            .collectAsMap();
    StringBuilder text = new StringBuilder(HEAD).append('\n');
    List<String> names = names();
    for (int i = 0; i < names.size(); i++) {
      text.append(names.get(i)).append(lines.getOrDefault(i, Line.NONE)).append('\n');
    }
    return text.toString();
  }

  private static Iterator<Tuple2<String, Known>> known(LaidOut laid) {
    return Stream.concat(
            laid.eyes().stream().map(row -> new Tuple2<>(Known.person(row), Known.ofEye(row))),
            laid.findings().stream()
                .filter(Known::isSensitive)
                .map(row -> new Tuple2<>(Known.person(row), Known.ofFinding(row))))
        .iterator();
  }

  /** Returns what the lines are about, in their order. */
  private static List<String> names() {
    List<String> names = new ArrayList<>();
    PoolPlan.USUAL_TRAITS.forEach(trait -> names.add("k," + trait + ","));
    names.add("k," + ALL + ",");
    names.add("k," + RiskReport.VISITS + ",");
    names.add("k," + RiskReport.REFRACTION + ",");
    names.add("k," + String.join(" ", ALL, RiskReport.VISITS, RiskReport.REFRACTION) + ",");
    RiskReport.SENSITIVE.forEach(finding -> names.add("l," + ALL + "," + finding));
    return names;
  }

  /** Returns the groups that a person is in: one for each line. */
  private static List<Tuple2<Tuple2<Integer, String>, Group>> groups(Known person) {
    List<Tuple2<Tuple2<Integer, String>, Group>> groups = new ArrayList<>();
    for (int i = 0; i < PoolPlan.USUAL_TRAITS.size(); i++) {
      add(groups, person.trait(i), "");
    }
    add(groups, person.traits(), "");
    add(groups, person.visits(), "");
    add(groups, person.refractions(), "");
    add(groups, person.traits() + person.visits() + person.refractions(), "");
    for (int i = 0; i < RiskReport.SENSITIVE.size(); i++) {
      add(groups, person.traits(), person.found(i));
    }
    return groups;
  }

  private static void add(
      List<Tuple2<Tuple2<Integer, String>, Group>> groups, String alike, String found) {
    groups.add(new Tuple2<>(new Tuple2<>(groups.size(), alike), new Group(1, Set.of(found))));
  }

  /**
   * Persons who are alike.
   *
   * @param persons how many they are
   * @param found the different courses of a finding among them
   */
  private record Group(long persons, Set<String> found) implements Serializable {

    Group plus(Group other) {
      Set<String> both = new HashSet<>(found);
      both.addAll(other.found);
      return new Group(persons + other.persons, both);
    }
  }

  /** The numbers of a line. */
  private record Line(long least, long groups, long persons, long few) implements Serializable {

    static final Line NONE = new Line(0, 0, 0, 0);

    static Line of(int place, Group group) {
      boolean k = names().get(place).startsWith("k");
      long size = k ? group.persons : group.found.size();
      boolean small = size < (k ? PoolPlan.USUAL_SMALLEST : 2);
      return new Line(size, 1, group.persons, small ? group.persons : 0);
    }

    Line plus(Line other) {
      return new Line(
          Math.min(least, other.least),
          groups + other.groups,
          persons + other.persons,
          few + other.few);
    }

    @Override
    public String toString() {
      return "," + least + "," + groups + "," + persons + "," + few;
    }
  }
}
