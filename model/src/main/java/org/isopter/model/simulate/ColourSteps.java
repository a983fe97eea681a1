package org.isopter.model.simulate;

import java.util.Optional;
import org.isopter.model.answer.sight.ColourTest;
import org.isopter.model.catalogue.Colours;
import org.isopter.model.exam.Fact;
import org.isopter.model.value.Absence;
import org.isopter.model.value.Site;
import org.isopter.model.value.Unit;

/** Colour plates and the red of one eye beside the other. */
final class ColourSteps {

  private static final int SHOWN = 15;
  private static final int EDITION = 24;

  /** An acuity in logMAR with which the first plate is seen. */
  private static final double SEES_WELL = 0.3;

  private ColourSteps() {}

  static void add(Visit visit) {
    if (visit.done(VisitStep.PLATES, Colours.PLATES)) {
      Site.EACH_EYE.forEach(eye -> visit.add(plates(visit, eye)));
    }
    if (visit.done(VisitStep.RED, Colours.RED_SATURATION)) {
      Site.EACH_EYE.forEach(eye -> visit.add(red(visit, eye)));
    }
  }

  private static Fact<?> plates(Visit visit, Site eye) {
    if (visit.of(eye, Measure.ACUITY) > 1) {
      return Fact.absent(Colours.PLATES, eye, Absence.UNABLE);
    }
    // Whoever sees well reads the first plate, which is there to show how it is done.
    int least = visit.of(eye, Measure.ACUITY) < SEES_WELL ? 1 : 0;
    int read = Math.max(least, (int) Math.rint(visit.of(eye, Measure.PLATES)));
    return Fact.of(
        Colours.PLATES,
        eye,
        new Colours.Plates(read, SHOWN, ColourTest.ISHIHARA, Optional.of(EDITION)));
  }

  private static Fact<?> red(Visit visit, Site eye) {
    return switch (visit.vision(eye)) {
      case LIGHT, NONE -> Fact.absent(Colours.RED_SATURATION, eye, Absence.NOT_APPLICABLE);
      default ->
          Fact.of(
              Colours.RED_SATURATION,
              eye,
              WrittenNumbers.quantity(visit.of(eye, Measure.RED), 1, 0, Unit.PERCENT));
    };
  }
}
