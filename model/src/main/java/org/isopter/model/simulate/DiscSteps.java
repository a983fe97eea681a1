package org.isopter.model.simulate;

import java.util.List;
import java.util.Optional;
import org.isopter.model.answer.tissue.DiscColour;
import org.isopter.model.answer.tissue.DiscMargin;
import org.isopter.model.answer.tissue.FundusMethod;
import org.isopter.model.answer.tissue.Presence;
import org.isopter.model.catalogue.Discs;
import org.isopter.model.exam.Fact;
import org.isopter.model.finding.Finding;
import org.isopter.model.value.Absence;
import org.isopter.model.value.Site;

/** The optic disc. */
final class DiscSteps {

  private static final List<FundusMethod> METHODS =
      List.of(FundusMethod.SLIT_LAMP, FundusMethod.DIRECT_OPHTHALMOSCOPY);

  /** Months after which the swelling of optic neuritis has gone. */
  private static final int FLAT_AFTER = 2;

  private final Visit visit;
  private final FundusMethod method;

  private DiscSteps(Visit visit) {
    this.visit = visit;
    this.method = visit.draw.pick(METHODS);
  }

  static void add(Visit visit) {
    if (visit.done(VisitStep.DISC, Discs.VERTICAL_CUP, Discs.MARGIN)) {
      DiscSteps steps = new DiscSteps(visit);
      Site.EACH_EYE.forEach(steps::disc);
    }
  }

  private void disc(Site eye) {
    int grade = frisen(eye);
    boolean swollen = grade > 0 || inflamed(eye);
    if (grade >= 3) {
      visit.add(Fact.absent(Discs.VERTICAL_CUP, eye, Absence.NOT_APPLICABLE));
    } else {
      double cup = visit.of(eye, Measure.CUP);
      add(Discs.VERTICAL_CUP, eye, WrittenNumbers.stepped(cup, 0.05, 2));
    }
    DiscMargin margin =
        !swollen ? DiscMargin.CLEAR : grade == 1 ? DiscMargin.PARTLY_BLURRED : DiscMargin.BLURRED;
    add(Discs.MARGIN, eye, margin);
    add(Discs.COLOUR, eye, Discs.Colour.of(colour(eye, swollen)));
    Optional<Integer> stated = grade > 0 ? Optional.of(grade) : Optional.empty();
    add(
        Discs.SWELLING,
        eye,
        new Discs.Swelling(swollen ? Presence.PRESENT : Presence.ABSENT, stated));
  }

  private int frisen(Site eye) {
    return visit.person.has(Group.PAPILLOEDEMA, eye)
        ? Math.max(0, visit.person.frisen - visit.months / Figures.MONTHS_PER_GRADE)
        : 0;
  }

  private boolean inflamed(Site eye) {
    return visit.person.shows(Group.NEUROPATHY, Likelihood.NEURITIS_SWELLING)
        && visit.person.affected(eye)
        && visit.months < FLAT_AFTER;
  }

  private DiscColour colour(Site eye, boolean swollen) {
    if (swollen) {
      return DiscColour.HYPERAEMIC;
    }
    boolean pale =
        (visit.person.has(Group.NEUROPATHY, eye) && visit.months >= FLAT_AFTER)
            || visit.person.shows(Group.CHIASM, Likelihood.CHIASM_PALLOR);
    return pale ? DiscColour.TEMPORAL_PALLOR : DiscColour.PINK;
  }

  private <V> void add(Finding<V> finding, Site eye, V value) {
    visit.addRemarked(Fact.of(finding, eye, value).by(method), Phrases.DISC_REMARKS);
  }
}
