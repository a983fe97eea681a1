package org.isopter.model.simulate;

import static org.isopter.model.simulate.Drawn.COHORT;
import static org.isopter.model.simulate.Drawn.ERRORS;
import static org.isopter.model.simulate.Drawn.EXAMS;
import static org.isopter.model.simulate.Drawn.FIRST;
import static org.isopter.model.simulate.Drawn.PERSONS;
import static org.isopter.model.simulate.Drawn.age;
import static org.isopter.model.simulate.Drawn.covariance;
import static org.isopter.model.simulate.Drawn.found;
import static org.isopter.model.simulate.Drawn.isWoman;
import static org.isopter.model.simulate.Drawn.mean;
import static org.isopter.model.simulate.Drawn.number;
import static org.isopter.model.simulate.Drawn.pair;
import static org.isopter.model.simulate.Drawn.share;
import static org.isopter.model.simulate.Drawn.variance;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import org.isopter.model.answer.sight.Correction;
import org.isopter.model.answer.tissue.Tonometry;
import org.isopter.model.catalogue.Acuities;
import org.isopter.model.catalogue.AcuityReading;
import org.isopter.model.catalogue.Colours;
import org.isopter.model.catalogue.Corneas;
import org.isopter.model.catalogue.Pressures;
import org.isopter.model.catalogue.Refractions;
import org.isopter.model.exam.Exam;
import org.isopter.model.exam.Fact;
import org.isopter.model.simulate.Drawn.Pair;
import org.isopter.model.value.Absence;
import org.isopter.model.value.Acuity;
import org.isopter.model.value.Quantity;
import org.isopter.model.value.Site;
import org.junit.jupiter.api.DynamicTest;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.TestFactory;

/**
 * What is drawn hangs together as the table of relations states, within five standard errors. The
 * sources stand beside the numbers in {@link Relation} and {@link Figures}.
 */
class RelationsTest {

  @TestFactory
  Stream<DynamicTest> aGroupHasItsAgesAndSexes() {
    return Figures.YEARS.stream()
        .map(row -> DynamicTest.dynamicTest(row.group().title(), () -> agesAndSexes(row)));
  }

  private static void agesAndSexes(Figures.Years row) {
    List<Exam> exams =
        IntStream.range(0, PERSONS)
            .filter(person -> COHORT.group(person) == row.group())
            .mapToObj(FIRST::get)
            .toList();
    long women = exams.stream().filter(Drawn::isWoman).count();
    share(row.women(), women, exams.size());
    double mean = mean(exams.stream().map(Drawn::age).toList());
    double deviation = row.spread().deviation();
    // Whole years are half a year less, and ends are cut as the table states.
    double error = ERRORS * deviation / Math.sqrt(exams.size());
    assertEquals(cut(row) - 0.5, mean, error);
  }

  /** The mean of a normal distribution whose ends are set to the ends. */
  private static double cut(Figures.Years row) {
    double sum = 0;
    double weights = 0;
    for (double z = -8; z <= 8; z += 0.001) {
      double weight = Math.exp(-z * z / 2);
      double value = row.spread().mean() + z * row.spread().deviation();
      sum += weight * Math.min(row.most(), Math.max(row.least(), value));
      weights += weight;
    }
    return sum / weights;
  }

  @Test
  void aPersonGrowsOlderFromVisitToVisitAndStaysOfOneSex() {
    for (List<Exam> exams : EXAMS) {
      double last = 0;
      for (Exam exam : exams) {
        assertTrue(age(exam) >= last && age(exam) <= age(exams.get(0)) + 5);
        assertEquals(isWoman(exams.get(0)), isWoman(exam));
        last = age(exam);
      }
    }
  }

  /**
   * Smith, Optom Vis Sci 1991, from memory: the least angle grows by 0.65 minutes of arc for each
   * millimetre of pupil and dioptre of blur; one dioptre and a pupil of 4 mm make 2.8 minutes of 1.
   */
  @Test
  void unaidedAcuityFollowsTheRefraction() {
    assertEquals(0.445, Vision.acuity(0, Vision.blur(-1, 0, 60), 4), 0.001);
    assertEquals(
        Vision.blur(-1, 0, 60), Vision.blur(1, 0, 60), 1e-9, "no accommodation is left at 60");
    assertEquals(0, Vision.blur(3, 0, 20), 1e-9);
    List<Double> off = new ArrayList<>();
    for (Exam exam : FIRST) {
      Optional<Double> unaided = logMar(exam, Correction.UNAIDED);
      Optional<Double> aided =
          Stream.of(Correction.SPECTACLES, Correction.CONTACT_LENSES, Correction.TRIAL_LENSES)
              .flatMap(lens -> logMar(exam, lens).stream())
              .findFirst();
      Optional<Refractions.Refraction> lens = found(exam, Refractions.REFRACTION, Site.RIGHT);
      if (unaided.isPresent() && aided.isPresent() && lens.isPresent()) {
        off.add(unaided.get() - predicted(aided.get(), lens.get(), age(exam)));
      }
    }
    assertTrue(off.size() > 50, off.size() + " eyes");
    // A lens is written in quarters of a dioptre: an eighth of blur is a tenth of logMAR at most.
    assertTrue(off.stream().allMatch(one -> Math.abs(one) < 0.15), off::toString);
    assertEquals(0, mean(off), ERRORS * 0.06 / Math.sqrt(off.size()) + 0.01);
  }

  private static double predicted(double best, Refractions.Refraction lens, double age) {
    double sphere = lens.sphere().value().doubleValue();
    double cylinder = lens.cylinder().map(any -> any.power().value().doubleValue()).orElse(0.0);
    double mean = sphere + cylinder / 2;
    double clear = Math.max(0, 15 - 0.25 * (age + 0.5)) / 2;
    double left = mean > 0 ? Math.max(0, mean - clear) : mean;
    double blur = 0.65 * 4 * Math.hypot(left, cylinder / 2);
    return Math.log10(Math.hypot(Math.pow(10, best), blur));
  }

  private static Optional<Double> logMar(Exam exam, Correction lens) {
    return exam.view()
        .right()
        .facts(Acuities.DISTANCE)
        .flatMap(fact -> fact.outcome().ifFound().stream())
        .filter(reading -> reading.correction().equals(Optional.of(lens)))
        .map(AcuityReading::acuity)
        .filter(Acuity.LogMar.class::isInstance)
        .map(acuity -> ((Acuity.LogMar) acuity).value().doubleValue())
        .findFirst();
  }

  @Test
  void halfOfTheVisitsWithGlassesHaveTheAcuityWithoutThemToo() {
    List<Exam> worn =
        FIRST.stream().filter(exam -> lenses(exam).anyMatch(RelationsTest::isAided)).toList();
    long both =
        worn.stream().filter(exam -> lenses(exam).anyMatch(Correction.UNAIDED::equals)).count();
    share(Relation.UNAIDED_TOO.number(), both, worn.size());
  }

  private static boolean isAided(Correction lens) {
    return lens != Correction.UNAIDED;
  }

  private static Stream<Correction> lenses(Exam exam) {
    return exam.view()
        .right()
        .facts(Acuities.DISTANCE)
        .flatMap(fact -> fact.outcome().ifFound().stream())
        .flatMap(reading -> reading.correction().stream());
  }

  @Test
  void theAxesMirrorEachOtherAndStayBetweenVisits() {
    List<Double> off = new ArrayList<>();
    for (List<Exam> exams : EXAMS) {
      List<Pair> axes = exams.stream().flatMap(RelationsTest::axes).toList();
      if (!axes.isEmpty()) {
        double turned = (axes.get(0).one() + axes.get(0).other()) % 180;
        off.add(turned > 90 ? turned - 180 : turned);
      }
      assertTrue(axes.stream().distinct().count() <= 1, axes::toString);
    }
    double spread = Math.sqrt(mean(off.stream().map(one -> one * one).toList()));
    // Axes are written in steps of five degrees, whose rounding adds a twelfth of their square.
    double stated = Math.sqrt(Math.pow(Relation.AXES.number(), 2) + 25 / 12.0);
    assertEquals(stated, spread, ERRORS * stated / Math.sqrt(2.0 * off.size()));
  }

  private static Stream<Pair> axes(Exam exam) {
    return pair(
        exam,
        Refractions.REFRACTION,
        lens -> lens.cylinder().orElseThrow().axis().value().doubleValue());
  }

  @Test
  void theSpheresOfBothEyesAreAlike() {
    List<Pair> pairs =
        IntStream.range(0, PERSONS)
            .filter(person -> COHORT.group(person) == Group.HEALTHY)
            .mapToObj(FIRST::get)
            .flatMap(
                exam ->
                    pair(exam, Refractions.REFRACTION, lens -> lens.sphere().value().doubleValue()))
            .toList();
    double likeness = Measure.SPHERE.likeness();
    assertEquals(
        likeness,
        covariance(pairs) / Math.sqrt(variance(pairs, Pair::one) * variance(pairs, Pair::other)),
        ERRORS * (1 - likeness * likeness) / Math.sqrt(pairs.size()));
  }

  @TestFactory
  Stream<DynamicTest> aThickCorneaMakesATonometerReadHigh() {
    return Stream.of(Tonometry.GOLDMANN, Tonometry.REBOUND, Tonometry.NON_CONTACT)
        .map(method -> DynamicTest.dynamicTest(method.word(), () -> readsHigh(method)));
  }

  private static void readsHigh(Tonometry method) {
    List<Pair> pairs = new ArrayList<>();
    for (Exam exam : FIRST) {
      Optional<Quantity> thickness = found(exam, Corneas.THICKNESS, Site.RIGHT);
      Optional<Quantity> pressure =
          exam.view()
              .right()
              .facts(Pressures.INTRAOCULAR)
              .filter(fact -> fact.method().filter(method::equals).isPresent())
              .flatMap(fact -> fact.outcome().ifFound().stream())
              .findFirst();
      if (thickness.isPresent() && pressure.isPresent()) {
        pairs.add(new Pair(number(thickness.get()) / 10, number(pressure.get())));
      }
    }
    double slope = covariance(pairs) / variance(pairs, Pair::one);
    double error =
        Math.sqrt(variance(pairs, Pair::other) / variance(pairs, Pair::one) / pairs.size());
    assertEquals(Relation.valueOf(method.name()).number(), slope, ERRORS * error);
    assertTrue(slope > 0, "slope " + slope);
  }

  /** Mikolajczyk et al., Neurol Clin Pract 2022: 24 % of healthy persons, mean 9, range 2 to 25. */
  @Test
  void redDiffersInAsManyHealthyPersonsAsPublished() {
    List<Double> differences =
        IntStream.range(0, PERSONS)
            .filter(person -> COHORT.group(person) != Group.NEUROPATHY)
            .mapToObj(FIRST::get)
            .flatMap(exam -> pair(exam, Colours.RED_SATURATION, Drawn::number))
            .map(pair -> Math.abs(pair.one() - pair.other()))
            .toList();
    List<Double> some = differences.stream().filter(one -> one > 0).toList();
    share(0.24, some.size(), differences.size());
    assertEquals(9, mean(some), ERRORS * 6 / Math.sqrt(some.size()));
    assertTrue(some.stream().allMatch(one -> one >= 2 && one <= 25), some::toString);
  }

  @TestFactory
  Stream<DynamicTest> whoIsVeryYoungOrOldIsUnableMoreOften() {
    double usual = VisitStep.PRESSURE.absent(Absence.UNABLE);
    return Stream.of(
        DynamicTest.dynamicTest("below 8", () -> unable(0, 7, usual * 4)),
        DynamicTest.dynamicTest("from 80 on", () -> unable(80, 130, usual * 3)),
        DynamicTest.dynamicTest("between", () -> unable(8, 79, usual)));
  }

  private static void unable(int least, int most, double stated) {
    List<Exam> asked =
        EXAMS.stream()
            .flatMap(List::stream)
            .filter(exam -> age(exam) >= least && age(exam) <= most)
            .filter(exam -> exam.view().facts(Pressures.INTRAOCULAR).findAny().isPresent())
            .toList();
    long unable =
        asked.stream()
            .filter(
                exam ->
                    exam.view()
                        .right()
                        .facts(Pressures.INTRAOCULAR)
                        .map(Fact::outcome)
                        .anyMatch(it -> it.ifAbsent().equals(Optional.of(Absence.UNABLE))))
            .count();
    share(stated, unable, asked.size());
  }

  @Test
  void whoReadsLittleIsUnableMoreOften() {
    VisitStep step = VisitStep.PRESSURE;
    double place = step.absent(Absence.NOT_DONE) + step.absent(Absence.REFUSED) + 0.05;
    assertEquals(Optional.empty(), step.reason(place, 1));
    assertEquals(Optional.of(Absence.UNABLE), step.reason(place, Relation.UNABLE_LOW.number()));
  }
}
