package org.isopter.model.simulate;

import static org.isopter.model.simulate.Drawn.ERRORS;
import static org.isopter.model.simulate.Drawn.EXAMS;
import static org.isopter.model.simulate.Drawn.FIRST;
import static org.isopter.model.simulate.Drawn.age;
import static org.isopter.model.simulate.Drawn.found;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import org.isopter.model.answer.sight.Correction;
import org.isopter.model.catalogue.Acuities;
import org.isopter.model.catalogue.AcuityReading;
import org.isopter.model.catalogue.Discs;
import org.isopter.model.catalogue.Refractions;
import org.isopter.model.exam.Exam;
import org.isopter.model.finding.Finding;
import org.isopter.model.value.Absence;
import org.isopter.model.value.Acuity;
import org.isopter.model.value.Site;
import org.junit.jupiter.api.Test;

/** Who wears what, what a pinhole gains, and what little sight prevents, on what is drawn. */
class LensesTest {

  /** A lens is written in quarters of a dioptre, so that eyes near the limit are left out. */
  private static final double NEAR_THE_LIMIT = 0.1;

  @Test
  void whoSeesMuchBetterWithALensWearsOne() {
    int asked = 0;
    for (int person = 0; person < EXAMS.size(); person++) {
      Exam exam = FIRST.get(person);
      List<Correction> worn = readings(exam, Acuities.DISTANCE).map(LensesTest::lens).toList();
      Optional<Double> blurred =
          Site.EACH_EYE.stream()
              .flatMap(eye -> found(exam, Refractions.REFRACTION, eye).stream())
              .map(lens -> through(0, blur(lens, age(exam)), 4))
              .reduce(Math::max);
      boolean clear = blurred.filter(any -> Math.abs(any - 0.15) > NEAR_THE_LIMIT).isPresent();
      if (clear && !worn.isEmpty() && Drawn.COHORT.group(person) != Group.REFRACTIVE) {
        asked++;
        boolean aided = worn.stream().anyMatch(any -> any != Correction.UNAIDED);
        assertEquals(blurred.orElseThrow() > 0.15, aided, exam.header().id()::toString);
      }
    }
    assertTrue(asked > 500, asked + " persons");
  }

  @Test
  void whoHasOnlyARefractiveErrorComesWithoutALens() {
    assertTrue(
        Drawn.first(Group.REFRACTIVE)
            .flatMap(exam -> readings(exam, Acuities.DISTANCE))
            .allMatch(reading -> lens(reading) == Correction.UNAIDED));
  }

  /** Smith, Optom Vis Sci 1991, from memory: a pinhole of 1.2 mm for the pupil of 4 mm. */
  @Test
  void aPinholeLeavesTheBlurOfItsWidth() {
    List<Double> off = new ArrayList<>();
    for (Exam exam : Drawn.first(Group.REFRACTIVE).toList()) {
      Optional<Double> seen =
          exam.view()
              .right()
              .facts(Acuities.PINHOLE)
              .flatMap(fact -> fact.outcome().ifFound().stream())
              .flatMap(reading -> logMar(reading).stream())
              .findFirst();
      Optional<Refractions.Refraction> lens = found(exam, Refractions.REFRACTION, Site.RIGHT);
      if (seen.isPresent() && lens.isPresent()) {
        off.add(seen.get() - through(-0.02, blur(lens.get(), age(exam)), 1.2));
      }
    }
    assertTrue(off.size() > 30, off.size() + " eyes");
    assertEquals(0, Drawn.mean(off), ERRORS * 0.09 / Math.sqrt(off.size()) + 0.01);
  }

  @Test
  void printIsReadThroughGlassesFromFortyFiveOn() {
    List<Exam> older = FIRST.stream().filter(exam -> age(exam) >= 45).toList();
    assertFalse(older.stream().flatMap(exam -> readings(exam, Acuities.NEAR)).toList().isEmpty());
    assertFalse(
        older.stream()
            .flatMap(exam -> readings(exam, Acuities.NEAR))
            .anyMatch(reading -> lens(reading) == Correction.UNAIDED));
    assertTrue(
        FIRST.stream()
            .filter(exam -> age(exam) < 45)
            .flatMap(exam -> readings(exam, Acuities.NEAR))
            .anyMatch(reading -> lens(reading) == Correction.UNAIDED));
  }

  @Test
  void whoReadsLittleWithAnEyeIsUnableThreeTimesAsOften() {
    Cohort many = new Cohort(40_000, 97);
    List<Exam> low =
        IntStream.range(0, many.persons())
            .filter(person -> many.group(person) == Group.NEUROPATHY)
            .mapToObj(many::exams)
            .flatMap(List::stream)
            .filter(LensesTest::readsLittle)
            .filter(exam -> exam.view().facts(Discs.MARGIN).findAny().isPresent())
            .toList();
    long unable = low.stream().filter(LensesTest::isUnable).count();
    Drawn.share(3 * VisitStep.DISC.absent(Absence.UNABLE), unable, low.size());
    double usual = VisitStep.DISC.absent(Absence.UNABLE) * low.size();
    assertTrue(unable > usual + ERRORS * Math.sqrt(usual), unable + " of " + low.size());
  }

  private static boolean isUnable(Exam exam) {
    return exam.view()
        .right()
        .facts(Discs.MARGIN)
        .anyMatch(fact -> fact.outcome().ifAbsent().equals(Optional.of(Absence.UNABLE)));
  }

  /** Says whether an eye is too low for a chart, which no refraction that is drawn makes it. */
  private static boolean readsLittle(Exam exam) {
    return readings(exam, Acuities.DISTANCE)
        .map(AcuityReading::acuity)
        .anyMatch(Acuity.Low.class::isInstance);
  }

  private static Stream<AcuityReading> readings(Exam exam, Finding<AcuityReading> finding) {
    return Site.EACH_EYE.stream()
        .flatMap(eye -> exam.view().eye(eye).facts(finding))
        .flatMap(fact -> fact.outcome().ifFound().stream());
  }

  private static Correction lens(AcuityReading reading) {
    return reading.correction().orElseThrow();
  }

  private static Optional<Double> logMar(AcuityReading reading) {
    return reading.acuity() instanceof Acuity.LogMar any
        ? Optional.of(any.value().doubleValue())
        : Optional.empty();
  }

  /** The acuity in logMAR through a pupil of so many mm, by the formula of the source. */
  private static double through(double best, double blur, double pupil) {
    return Math.log10(Math.hypot(Math.pow(10, best), 0.65 * pupil * blur));
  }

  private static double blur(Refractions.Refraction lens, double age) {
    double cylinder = lens.cylinder().map(any -> any.power().value().doubleValue()).orElse(0.0);
    double mean = lens.sphere().value().doubleValue() + cylinder / 2;
    double clear = Math.max(0, 15 - 0.25 * (age + 0.5)) / 2;
    return Math.hypot(mean > 0 ? Math.max(0, mean - clear) : mean, cylinder / 2);
  }
}
