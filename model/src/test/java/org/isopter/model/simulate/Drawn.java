package org.isopter.model.simulate;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.List;
import java.util.Optional;
import java.util.function.ToDoubleFunction;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import org.isopter.model.exam.AdministrativeSex;
import org.isopter.model.exam.Exam;
import org.isopter.model.finding.Finding;
import org.isopter.model.value.Quantity;
import org.isopter.model.value.Site;

/** Invented examinations that are drawn once, and what tests ask of them. */
final class Drawn {

  static final int PERSONS = 6_000;
  static final double ERRORS = 5;
  static final Cohort COHORT = new Cohort(PERSONS, 414);
  static final List<List<Exam>> EXAMS =
      IntStream.range(0, PERSONS).mapToObj(COHORT::exams).toList();
  static final List<Exam> FIRST = EXAMS.stream().map(exams -> exams.get(0)).toList();

  /** Two numbers of one person. */
  record Pair(double one, double other) {}

  private Drawn() {}

  /** Returns the examinations of the first visits of a group. */
  static Stream<Exam> first(Group group) {
    return persons(group).mapToObj(FIRST::get);
  }

  /** Returns the numbers of the persons of a group. */
  static IntStream persons(Group group) {
    return IntStream.range(0, PERSONS).filter(person -> COHORT.group(person) == group);
  }

  static <V> Optional<V> found(Exam exam, Finding<V> finding, Site eye) {
    return exam.view()
        .eye(eye)
        .facts(finding)
        .flatMap(fact -> fact.outcome().ifFound().stream())
        .findFirst();
  }

  static <V> Stream<Pair> pair(Exam exam, Finding<V> finding, ToDoubleFunction<V> number) {
    return found(exam, finding, Site.RIGHT)
        .flatMap(
            one ->
                found(exam, finding, Site.LEFT)
                    .map(other -> new Pair(number.applyAsDouble(one), number.applyAsDouble(other))))
        .stream();
  }

  static boolean isWoman(Exam exam) {
    return exam.header().demographics().sex().equals(Optional.of(AdministrativeSex.FEMALE));
  }

  static double age(Exam exam) {
    return number(exam.header().demographics().age().orElseThrow());
  }

  static double number(Quantity quantity) {
    return quantity.value().doubleValue();
  }

  static double mean(List<Double> numbers) {
    return numbers.stream().mapToDouble(Double::doubleValue).average().orElseThrow();
  }

  static double variance(List<Pair> pairs, ToDoubleFunction<Pair> which) {
    double mean = pairs.stream().mapToDouble(which).average().orElseThrow();
    return pairs.stream()
        .mapToDouble(pair -> Math.pow(which.applyAsDouble(pair) - mean, 2))
        .average()
        .orElseThrow();
  }

  static double covariance(List<Pair> pairs) {
    double one = pairs.stream().mapToDouble(Pair::one).average().orElseThrow();
    double other = pairs.stream().mapToDouble(Pair::other).average().orElseThrow();
    return pairs.stream()
        .mapToDouble(pair -> (pair.one() - one) * (pair.other() - other))
        .average()
        .orElseThrow();
  }

  static void share(double stated, long drawn, long of) {
    double error = ERRORS * Math.sqrt(stated * (1 - stated) / of);
    assertEquals(stated, (double) drawn / of, error);
  }
}
