package org.isopter.model.simulate;

import static org.isopter.model.simulate.Drawn.ERRORS;
import static org.isopter.model.simulate.Drawn.EXAMS;
import static org.isopter.model.simulate.Drawn.covariance;
import static org.isopter.model.simulate.Drawn.found;
import static org.isopter.model.simulate.Drawn.variance;
import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.function.ToDoubleFunction;
import java.util.stream.Stream;
import org.isopter.model.catalogue.Corneas;
import org.isopter.model.catalogue.Discs;
import org.isopter.model.catalogue.Pressures;
import org.isopter.model.catalogue.Refractions;
import org.isopter.model.exam.Exam;
import org.isopter.model.exam.Fact;
import org.isopter.model.finding.Finding;
import org.isopter.model.simulate.Drawn.Pair;
import org.isopter.model.value.Site;
import org.junit.jupiter.api.DynamicTest;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.TestFactory;

/**
 * The two eyes of a person are as alike, and two visits differ by as much, as the table of measures
 * states. Healthy eyes are asked, in which nothing else changes.
 */
class LikenessTest {

  /**
   * A measure and how it is written down.
   *
   * @param step the step to which it is rounded, which makes eyes less alike and visits differ more
   */
  private record Written<V>(
      Measure measure, Finding<V> finding, ToDoubleFunction<V> number, double step) {

    /** What rounding adds to the square of the deviation. */
    double rounding() {
      return step * step / 12;
    }
  }

  private static final List<Written<?>> WRITTEN =
      List.of(
          new Written<>(Measure.PRESSURE, Pressures.INTRAOCULAR, Drawn::number, 1),
          new Written<>(Measure.CUP, Discs.VERTICAL_CUP, cup -> cup.doubleValue(), 0.05),
          new Written<>(
              Measure.SPHERE,
              Refractions.REFRACTION,
              lens -> lens.sphere().value().doubleValue(),
              0.25));

  @TestFactory
  Stream<DynamicTest> theEyesOfAPersonAreAlike() {
    return WRITTEN.stream()
        .map(it -> DynamicTest.dynamicTest(it.measure().title(), () -> like(it)));
  }

  private static void like(Written<?> it) {
    List<Pair> pairs = Drawn.first(Group.HEALTHY).flatMap(exam -> pair(exam, it)).toList();
    double drawn = variance(pairs, Pair::one);
    double stated = it.measure().likeness() * (1 - it.rounding() / drawn);
    assertEquals(stated, correlation(pairs), ERRORS * (1 - stated * stated) / root(pairs.size()));
  }

  private static <V> Stream<Pair> pair(Exam exam, Written<V> it) {
    return Drawn.pair(exam, it.finding(), it.number());
  }

  @TestFactory
  Stream<DynamicTest> visitsDifferAsMuchAsMeasuringTwice() {
    return WRITTEN.stream()
        .map(it -> DynamicTest.dynamicTest(it.measure().title(), () -> retest(it)));
  }

  private static void retest(Written<?> it) {
    List<Double> changes =
        Drawn.persons(Group.HEALTHY)
            .mapToObj(EXAMS::get)
            .filter(exams -> exams.size() > 1)
            .flatMap(exams -> change(it, exams.get(0), exams.get(1)).stream())
            .toList();
    double deviation = Math.sqrt(Drawn.mean(changes.stream().map(one -> one * one).toList()));
    double stated = Math.sqrt(Math.pow(it.measure().retest(), 2) + 2 * it.rounding());
    assertEquals(stated, deviation, ERRORS * stated / root(2.0 * changes.size()));
  }

  /** The change of the right eye by the same technique; the first visit is without chance. */
  private static <V> Optional<Double> change(Written<V> it, Exam before, Exam after) {
    return found(before, it.finding(), Site.RIGHT)
        .filter(any -> technique(before, it).equals(technique(after, it)))
        .flatMap(
            one ->
                found(after, it.finding(), Site.RIGHT)
                    .map(two -> it.number().applyAsDouble(two) - it.number().applyAsDouble(one)));
  }

  private static Optional<?> technique(Exam exam, Written<?> it) {
    // The thickness of a cornea moves what one tonometer reads more than what another does.
    return it.measure() == Measure.PRESSURE
        ? exam.view().right().facts(it.finding()).findFirst().flatMap(Fact::method)
        : Optional.empty();
  }

  /** Doughty and Zaman, Surv Ophthalmol 2000, from memory: 544 um, SD 35. */
  @Test
  void corneasAreAsThickAsPublished() {
    List<Pair> pairs = new ArrayList<>();
    for (Exam exam : Drawn.FIRST) {
      Drawn.pair(exam, Corneas.THICKNESS, Drawn::number).forEach(pairs::add);
    }
    double error = ERRORS / root(pairs.size());
    assertEquals(544, Drawn.mean(pairs.stream().map(Pair::one).toList()), 35 * error);
    assertEquals(35, Math.sqrt(variance(pairs, Pair::other)), 35 * error / root(2));
    double likeness = Relation.THICKNESS_LIKENESS.number();
    assertEquals(likeness, correlation(pairs), error * (1 - likeness * likeness));
  }

  @Test
  void thicknessIsMeasuredAtAFifthOfTheVisitsWithAPressure() {
    List<Exam> measured =
        Drawn.FIRST.stream()
            .filter(exam -> found(exam, Pressures.INTRAOCULAR, Site.RIGHT).isPresent())
            .toList();
    long thick =
        measured.stream()
            .filter(exam -> found(exam, Corneas.THICKNESS, Site.RIGHT).isPresent())
            .count();
    Drawn.share(Relation.THICKNESS_MEASURED.number(), thick, measured.size());
  }

  private static double correlation(List<Pair> pairs) {
    return covariance(pairs) / root(variance(pairs, Pair::one) * variance(pairs, Pair::other));
  }

  private static double root(double number) {
    return Math.sqrt(number);
  }
}
