package org.isopter.model.simulate;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.math.BigDecimal;
import java.util.List;
import java.util.function.Function;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import org.isopter.model.answer.pupil.Lighting;
import org.isopter.model.catalogue.Colours;
import org.isopter.model.catalogue.Discs;
import org.isopter.model.catalogue.Perimetry;
import org.isopter.model.catalogue.Pressures;
import org.isopter.model.catalogue.Pupils;
import org.isopter.model.exam.Exam;
import org.isopter.model.exam.Fact;
import org.isopter.model.finding.Finding;
import org.isopter.model.value.Absence;
import org.isopter.model.value.Quantity;
import org.junit.jupiter.api.DynamicTest;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.TestFactory;

/**
 * What is drawn has the shares and the means that the table states, within five standard errors.
 */
class FiguresTest {

  private static final int PERSONS = 6_000;
  private static final double ERRORS = 5;
  private static final Cohort COHORT = new Cohort(PERSONS, 2026);
  private static final List<Group> GROUPS =
      IntStream.range(0, PERSONS).mapToObj(COHORT::group).toList();
  private static final List<List<Exam>> EXAMS =
      IntStream.range(0, PERSONS).mapToObj(COHORT::exams).toList();

  @TestFactory
  Stream<DynamicTest> aGroupHasItsShare() {
    return Stream.of(Group.values())
        .map(
            group ->
                DynamicTest.dynamicTest(
                    group.title(),
                    () ->
                        share(
                            group.share(),
                            GROUPS.stream().filter(group::equals).count(),
                            PERSONS)));
  }

  @TestFactory
  Stream<DynamicTest> visitsHaveTheirShares() {
    return Figures.VISITS.of().entrySet().stream()
        .map(
            entry ->
                DynamicTest.dynamicTest(
                    entry.getKey() + " visits",
                    () ->
                        share(
                            entry.getValue(),
                            EXAMS.stream().filter(e -> e.size() == entry.getKey()).count(),
                            PERSONS)));
  }

  @Test
  void aPressureIsSilentOrAbsentAsOftenAsStated() {
    // Who is very young or old is unable more often.
    List<Exam> all =
        EXAMS.stream().flatMap(List::stream).filter(FiguresTest::isOfUsualAge).toList();
    long silent =
        all.stream().filter(e -> e.view().facts(Pressures.INTRAOCULAR).findAny().isEmpty()).count();
    share(VisitStep.PRESSURE.silent(), silent, all.size());
    for (Absence why : List.of(Absence.NOT_DONE, Absence.REFUSED, Absence.UNABLE)) {
      long absent =
          all.stream()
              .filter(
                  e ->
                      e.view()
                          .right()
                          .facts(Pressures.INTRAOCULAR)
                          .anyMatch(f -> f.outcome().ifAbsent().filter(why::equals).isPresent()))
              .count();
      share((1 - VisitStep.PRESSURE.silent()) * VisitStep.PRESSURE.absent(why), absent, all.size());
    }
  }

  private static boolean isOfUsualAge(Exam exam) {
    int age = exam.header().demographics().age().orElseThrow().value().intValue();
    return age >= 8 && age < 80;
  }

  @TestFactory
  Stream<DynamicTest> aMeasureHasItsMean() {
    return Figures.ROWS.stream()
        .flatMap(row -> measured(row).map(test -> DynamicTest.dynamicTest(name(row), test)));
  }

  private static String name(Figures.Row row) {
    return row.group() + " " + row.measure();
  }

  private static Stream<org.junit.jupiter.api.function.Executable> measured(Figures.Row row) {
    return switch (row.measure()) {
      case PRESSURE -> one(row, Pressures.INTRAOCULAR, Quantity::value);
      case CUP -> one(row, Discs.VERTICAL_CUP, value -> value);
      case RED -> one(row, Colours.RED_SATURATION, Quantity::value);
      case PLATES -> one(row, Colours.PLATES, v -> BigDecimal.valueOf(v.correct()));
      case MEAN_DEVIATION -> one(row, Perimetry.MEAN_DEVIATION, value -> value);
      case PUPIL -> one(row, Pupils.SIZE, FiguresTest::inRoomLight);
      default -> Stream.empty();
    };
  }

  private static BigDecimal inRoomLight(Pupils.Size size) {
    return size.lighting() == Lighting.ROOM ? size.diameter().value() : NONE;
  }

  private static final BigDecimal NONE = BigDecimal.valueOf(Long.MIN_VALUE);

  private static <V> Stream<org.junit.jupiter.api.function.Executable> one(
      Figures.Row row, Finding<V> finding, Function<V, BigDecimal> number) {
    return Stream.of(() -> mean(row, drawn(row, finding, number)));
  }

  /** The value of the first visit in one affected eye of each person, so that none counts twice. */
  private static <V> List<Double> drawn(
      Figures.Row row, Finding<V> finding, Function<V, BigDecimal> number) {
    return IntStream.range(0, PERSONS)
        .filter(person -> GROUPS.get(person) == row.group())
        .boxed()
        .flatMap(
            person ->
                EXAMS
                    .get(person)
                    .get(0)
                    .view()
                    .eye(COHORT.side(person))
                    .facts(finding)
                    .map(Fact::outcome)
                    .flatMap(outcome -> outcome.ifFound().stream())
                    .map(number)
                    .filter(value -> value.compareTo(NONE) != 0))
        .map(BigDecimal::doubleValue)
        .toList();
  }

  private static void mean(Figures.Row row, List<Double> drawn) {
    double mean = drawn.stream().mapToDouble(Double::doubleValue).average().orElseThrow();
    double error = ERRORS * row.spread().deviation() / Math.sqrt(drawn.size());
    assertEquals(expected(row), mean, error + 0.02 * Math.abs(row.spread().deviation()) + 1e-6);
  }

  /** The mean of a normal distribution cut at both ends, by summing over its density. */
  private static double expected(Figures.Row row) {
    double sum = 0;
    double weights = 0;
    for (double z = -8; z <= 8; z += 0.001) {
      double weight = Math.exp(-z * z / 2);
      double value = row.spread().mean() + z * row.spread().deviation();
      double cut = Math.min(row.measure().most(), Math.max(row.measure().least(), value));
      sum += weight * cut;
      weights += weight;
    }
    return sum / weights;
  }

  private static void share(double stated, long drawn, long of) {
    double error = ERRORS * Math.sqrt(stated * (1 - stated) / of);
    assertEquals(stated, (double) drawn / of, error);
  }
}
