package org.isopter.model.simulate;

import java.util.EnumMap;
import java.util.EnumSet;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import org.isopter.model.answer.pupil.DefectGrade;
import org.isopter.model.answer.sight.Correction;
import org.isopter.model.exam.AdministrativeSex;
import org.isopter.model.value.Site;

/** What stays with an invented person from visit to visit. */
final class InventedPerson {

  private static final Set<Measure> RECOVERING =
      EnumSet.of(Measure.ACUITY, Measure.PLATES, Measure.RED, Measure.MEAN_DEVIATION);

  final Group group;
  final Site side;
  final int frisen;
  final DefectGrade grade;
  final int ptosis;
  final PerEye axis;
  final Correction worn;
  final PerEye thickness;
  final AdministrativeSex sex;

  /** How much less red than the other eye one eye shows, in per cent; 0 where none does. */
  final double redder;

  private final double age;
  private final Map<Measure, PerEye> places = new EnumMap<>(Measure.class);
  private final Set<Likelihood> signs = EnumSet.noneOf(Likelihood.class);

  InventedPerson(Draw draw) {
    group = draw.pick(Figures.GROUPS);
    side = draw.pick(Site.EACH_EYE);
    frisen = draw.pick(Figures.FRISEN);
    grade = draw.pick(group == Group.GLAUCOMA ? Figures.GLAUCOMA_GRADES : Figures.NEURITIS_GRADES);
    ptosis = group == Group.THIRD_NERVE ? draw.between(3, 8) : draw.between(1, 2);
    Figures.Years years = Figures.years(group);
    age = years.draw(draw);
    sex = draw.place() < years.women() ? AdministrativeSex.FEMALE : AdministrativeSex.MALE;
    axis = axes(draw);
    thickness = thickness(draw);
    redder = draw.chance(Relation.RED_DIFFERENCE) ? red(draw) : 0;
    for (Measure measure : Measure.values()) {
      places.put(measure, PerEye.alike(draw, measure.likeness()));
    }
    for (Likelihood sign : Likelihood.values()) {
      if (draw.chance(sign)) {
        signs.add(sign);
      }
    }
    worn = worn(draw);
  }

  /** The axes of the two eyes are near to mirror images of each other. */
  private static PerEye axes(Draw draw) {
    int right = 5 * draw.between(1, 36);
    double left = 180 - right + Relation.AXES.number() * draw.normal();
    double turned = (Math.rint(left / 5) * 5) % 180;
    return new PerEye(right, turned <= 0 ? turned + 180 : turned);
  }

  private static PerEye thickness(Draw draw) {
    PerEye place = PerEye.alike(draw, Relation.THICKNESS_LIKENESS.number());
    double mean = Relation.THICKNESS.number();
    double deviation = Relation.THICKNESS_SPREAD.number();
    return new PerEye(mean + deviation * place.right(), mean + deviation * place.left());
  }

  /** Little is frequent and much is rare, so that the mean is as stated. */
  private static double red(Draw draw) {
    double least = Relation.RED_LEAST.number();
    double range = Relation.RED_MOST.number() - least;
    double mean = (Relation.RED_MEAN.number() - least) / range;
    // The mean of a number between 0 and 1 to the power n is 1 / (n + 1).
    return least + range * Math.pow(draw.place(), 1 / mean - 1);
  }

  /** Who sees much better with a lens wears one, but for those who come because they have none. */
  private Correction worn(Draw draw) {
    Correction picked = draw.pick(AcuitySteps.WORN);
    boolean needs =
        Site.EACH_EYE.stream()
            .anyMatch(
                eye ->
                    Vision.acuity(0, blur(eye), Relation.ROOM_PUPIL.number())
                        > Relation.WORN.number());
    return group == Group.REFRACTIVE || !needs ? Correction.UNAIDED : picked;
  }

  /** Returns the blur of an eye without its lens at the first visit, in dioptres. */
  private double blur(Site eye) {
    return Vision.blur(value(eye, Measure.SPHERE, 0), value(eye, Measure.CYLINDER, 0), age);
  }

  /** Returns the age so many months after the first visit, in years. */
  double age(int months) {
    return age + months / 12.0;
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
    PerEye place = java.util.Objects.requireNonNull(places.get(measure));
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
