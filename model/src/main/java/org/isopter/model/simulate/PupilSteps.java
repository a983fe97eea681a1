package org.isopter.model.simulate;

import java.util.List;
import java.util.Optional;
import java.util.Set;
import org.isopter.model.answer.pupil.DefectGrade;
import org.isopter.model.answer.pupil.DefectSide;
import org.isopter.model.answer.pupil.Lighting;
import org.isopter.model.answer.pupil.PupilEquality;
import org.isopter.model.answer.pupil.PupilResponse;
import org.isopter.model.catalogue.Pupils;
import org.isopter.model.exam.Fact;
import org.isopter.model.finding.Finding;
import org.isopter.model.value.Site;
import org.isopter.model.value.Unit;

/** Sizes of the pupils, their responses and the swinging light test. */
final class PupilSteps {

  private static final List<PupilResponse> BEST_FIRST =
      List.of(
          PupilResponse.BRISK,
          PupilResponse.REACTIVE,
          PupilResponse.SLUGGISH,
          PupilResponse.ABSENT);
  private static final Set<Group> OF_THE_PUPIL =
      Set.of(Group.HORNER, Group.THIRD_NERVE, Group.TONIC_PUPIL);

  private PupilSteps() {}

  static void add(Visit visit) {
    if (!visit.done(VisitStep.PUPILS, Pupils.SIZE, Pupils.DIRECT)) {
      return;
    }
    List<Lighting> lights = lights(visit);
    lights.forEach(
        light ->
            Site.EACH_EYE.forEach(
                eye ->
                    visit.add(
                        Fact.of(
                            Pupils.SIZE,
                            eye,
                            new Pupils.Size(
                                WrittenNumbers.quantity(
                                    size(visit, eye, light), 0.5, 1, Unit.MILLIMETRE),
                                light)))));
    visit.add(Fact.of(Pupils.EQUALITY, Site.BOTH, equality(visit.person)));
    responses(visit, Pupils.DIRECT, true);
    responses(visit, Pupils.CONSENSUAL, false);
    for (Site eye : Site.EACH_EYE) {
      visit.add(Fact.of(Pupils.NEAR, eye, near(visit.person, eye)));
    }
    if (visit.done(VisitStep.DEFECT, Pupils.AFFERENT_DEFECT)) {
      visit.add(Fact.of(Pupils.AFFERENT_DEFECT, Site.BOTH, defect(visit)));
    }
  }

  private static List<Lighting> lights(Visit visit) {
    boolean all =
        OF_THE_PUPIL.contains(visit.person.group)
            || visit.draw.chance(Likelihood.SIZES_IN_LIGHT_AND_DARK);
    return all ? List.of(Lighting.BRIGHT, Lighting.ROOM, Lighting.DIM) : List.of(Lighting.ROOM);
  }

  /** The sympathetic widens in the dark; a palsy of the sphincter leaves the pupil wide. */
  private static double size(Visit visit, Site eye, Lighting light) {
    double natural = visit.of(eye, Measure.PUPIL);
    if (visit.person.has(Group.THIRD_NERVE, eye)) {
      return 7.5;
    }
    if (visit.person.has(Group.TONIC_PUPIL, eye)) {
      return 7;
    }
    boolean horner = visit.person.has(Group.HORNER, eye);
    return switch (light) {
      case BRIGHT -> natural - (horner ? 1.5 : 1);
      case ROOM -> natural - (horner ? 1 : 0);
      case DIM -> natural + (horner ? 0 : 1.5);
    };
  }

  private static PupilEquality equality(InventedPerson person) {
    return OF_THE_PUPIL.contains(person.group) ? PupilEquality.UNEQUAL : PupilEquality.EQUAL;
  }

  private static void responses(Visit visit, Finding<PupilResponse> finding, boolean own) {
    for (Site watched : Site.EACH_EYE) {
      PupilResponse afferent = afferent(visit, own ? watched : watched.fellow());
      PupilResponse efferent = efferent(visit.person, watched);
      visit.add(Fact.of(finding, watched, worse(afferent, efferent)));
    }
  }

  private static PupilResponse worse(PupilResponse one, PupilResponse other) {
    return BEST_FIRST.indexOf(one) > BEST_FIRST.indexOf(other) ? one : other;
  }

  /** Returns what light in an eye does at best. */
  private static PupilResponse afferent(Visit visit, Site lit) {
    if (visit.vision(lit) == Vision.NONE) {
      return PupilResponse.ABSENT;
    }
    if (!visit.person.defect().equals(Optional.of(lit))) {
      return PupilResponse.BRISK;
    }
    return switch (visit.person.grade) {
      case TRACE, GRADE_1 -> PupilResponse.BRISK;
      case GRADE_2 -> PupilResponse.REACTIVE;
      case GRADE_3, GRADE_4, GRADE_5 -> PupilResponse.SLUGGISH;
    };
  }

  /** Returns what a pupil does at best. */
  private static PupilResponse efferent(InventedPerson person, Site eye) {
    if (person.has(Group.THIRD_NERVE, eye)) {
      return PupilResponse.ABSENT;
    }
    return person.has(Group.TONIC_PUPIL, eye) ? PupilResponse.SLUGGISH : PupilResponse.BRISK;
  }

  private static PupilResponse near(InventedPerson person, Site eye) {
    return person.has(Group.TONIC_PUPIL, eye) ? PupilResponse.TONIC : efferent(person, eye);
  }

  private static Pupils.AfferentDefect defect(Visit visit) {
    Optional<Site> eye = visit.person.defect();
    if (eye.isEmpty()) {
      return Pupils.AfferentDefect.of(DefectSide.NONE);
    }
    boolean blind = visit.vision(eye.get()) == Vision.NONE;
    return new Pupils.AfferentDefect(
        eye.get() == Site.RIGHT ? DefectSide.RIGHT : DefectSide.LEFT,
        Optional.of(blind ? DefectGrade.GRADE_4 : visit.person.grade),
        Optional.empty());
  }
}
