package org.isopter.model.simulate;

import java.util.List;
import org.isopter.model.answer.sight.Chart;
import org.isopter.model.answer.sight.Correction;
import org.isopter.model.catalogue.Acuities;
import org.isopter.model.catalogue.AcuityReading;
import org.isopter.model.exam.Fact;
import org.isopter.model.value.Absence;
import org.isopter.model.value.Acuity;
import org.isopter.model.value.Quantity;
import org.isopter.model.value.Site;
import org.isopter.model.value.Unit;

/** Acuity at distance, through a pinhole and near. */
final class AcuitySteps {

  private static final List<Integer> PRINT = List.of(5, 6, 8, 10, 12, 14, 18, 24, 36, 48);
  static final List<Correction> WORN =
      List.of(
          Correction.SPECTACLES,
          Correction.SPECTACLES,
          Correction.SPECTACLES,
          Correction.TRIAL_LENSES,
          Correction.CONTACT_LENSES);

  /** An acuity so good is asked for no pinhole, in logMAR. */
  private static final double GOOD = 0.12;

  /** What a pinhole must gain to be written down as better, in logMAR. */
  private static final double LEAST_GAIN = 0.1;

  private AcuitySteps() {}

  static void add(Visit visit) {
    Correction lens = visit.person.worn;
    Notation notation = visit.draw.pick(Figures.NOTATIONS);
    if (visit.done(VisitStep.ACUITY, Acuities.DISTANCE)) {
      if (lens != Correction.UNAIDED && visit.draw.chance(Relation.UNAIDED_TOO)) {
        distance(visit, Correction.UNAIDED, notation);
      }
      distance(visit, lens, notation);
      for (Site eye : Site.EACH_EYE) {
        pinhole(visit, eye, lens, notation);
      }
    }
    if (visit.done(VisitStep.NEAR, Acuities.NEAR)) {
      boolean glasses = visit.person.age(visit.months) >= Relation.PRESBYOPIA.number();
      Correction read = glasses && lens == Correction.UNAIDED ? Correction.SPECTACLES : lens;
      Site.EACH_EYE.forEach(eye -> near(visit, eye, read));
    }
  }

  private static void distance(Visit visit, Correction lens, Notation notation) {
    for (Site eye : Site.EACH_EYE) {
      AcuityReading reading = AcuityLines.reading(visit.acuity(eye, lens), notation);
      visit.addRemarked(
          Fact.of(Acuities.DISTANCE, eye, reading.through(lens)), Phrases.ACUITY_REMARKS);
    }
  }

  private static void pinhole(Visit visit, Site eye, Correction lens, Notation notation) {
    double plain = visit.acuity(eye, lens);
    Vision vision = visit.vision(eye);
    if (vision == Vision.LIGHT || vision == Vision.NONE) {
      visit.add(Fact.absent(Acuities.PINHOLE, eye, Absence.NOT_APPLICABLE));
    } else if (plain > GOOD) {
      double through = lens == Correction.UNAIDED ? visit.unaided(eye, Relation.PINHOLE) : plain;
      AcuityReading reading =
          through < plain - LEAST_GAIN
              ? AcuityLines.reading(through, notation)
              : AcuityReading.of(new Acuity.NotImproved());
      visit.add(Fact.of(Acuities.PINHOLE, eye, reading.through(lens)));
    }
  }

  private static void near(Visit visit, Site eye, Correction lens) {
    double logMar = visit.of(eye, Measure.ACUITY);
    if (logMar > 1) {
      visit.add(Fact.absent(Acuities.NEAR, eye, Absence.UNABLE));
      return;
    }
    int line = (int) Math.max(0, Math.min(PRINT.size() - 1, Math.rint(logMar * 10)));
    Acuity print = new Acuity.Points(java.math.BigDecimal.valueOf(PRINT.get(line)));
    visit.add(
        Fact.of(
            Acuities.NEAR,
            eye,
            AcuityReading.of(print)
                .through(lens)
                .on(Chart.NEAR_CARD)
                .from(Quantity.of("40", Unit.CENTIMETRE))));
  }
}
