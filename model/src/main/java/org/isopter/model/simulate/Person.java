package org.isopter.model.simulate;

import java.util.EnumMap;
import java.util.EnumSet;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import org.isopter.model.answer.pupil.DefectGrade;
import org.isopter.model.value.Site;

/** What stays with an invented person from visit to visit. */
final class Person {

  private static final Set<Measure> RECOVERING =
      EnumSet.of(Measure.ACUITY, Measure.PLATES, Measure.RED, Measure.MEAN_DEVIATION);

  final Group group;
  final Site side;
  final int frisen;
  final DefectGrade grade;
  final int ptosis;
  final Eyes axis;
  private final Map<Measure, Eyes> places = new EnumMap<>(Measure.class);
  private final Set<Likelihood> signs = EnumSet.noneOf(Likelihood.class);

  Person(Draw draw) {
    group = draw.pick(Figures.GROUPS);
    side = draw.pick(Site.EACH_EYE);
    frisen = draw.pick(Figures.FRISEN);
    grade = draw.pick(group == Group.GLAUCOMA ? Figures.GLAUCOMA_GRADES : Figures.NEURITIS_GRADES);
    ptosis = group == Group.THIRD_NERVE ? draw.between(3, 8) : draw.between(1, 2);
    axis = new Eyes(5 * draw.between(1, 36), 5 * draw.between(1, 36));
    for (Measure measure : Measure.values()) {
      places.put(measure, Eyes.alike(draw, measure.likeness()));
    }
    for (Likelihood sign : Likelihood.values()) {
      if (draw.chance(sign)) {
        signs.add(sign);
      }
    }
  }

  boolean affected(Site eye) {
    return group.extent() == Group.Extent.BOTH
        || (group.extent() == Group.Extent.ONE && eye == side);
  }

  boolean shows(Group of, Likelihood sign) {
    return group == of && signs.contains(sign);
  }

  /** Says whether the person is of the group and the eye is one of those affected. */
  boolean has(Group of, Site eye) {
    return group == of && affected(eye);
  }

  /** Returns the eye that the swinging light test finds, when there is one. */
  Optional<Site> defect() {
    boolean there = group == Group.NEUROPATHY || shows(Group.GLAUCOMA, Likelihood.GLAUCOMA_DEFECT);
    return there ? Optional.of(side) : Optional.empty();
  }

  /** Returns the value of a measure so many months after the first visit, without chance. */
  double value(Site eye, Measure measure, double months) {
    Figures.Row row = Figures.of(affected(eye) ? group : Group.HEALTHY, measure);
    Eyes place = java.util.Objects.requireNonNull(places.get(measure));
    double first = measure.cut(row.spread().mean() + row.spread().deviation() * place.of(eye));
    return has(Group.NEUROPATHY, eye) && RECOVERING.contains(measure)
        ? recovered(first, measure, months)
        : first + row.yearly() * months / 12;
  }

  private static double recovered(double first, Measure measure, double months) {
    double goal = Figures.of(Group.HEALTHY, measure).spread().mean();
    return goal + (first - goal) * Math.pow(0.5, months / Figures.HALF_RECOVERED);
  }
}
