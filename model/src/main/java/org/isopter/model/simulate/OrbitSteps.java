package org.isopter.model.simulate;

import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.isopter.model.answer.movement.Alignment;
import org.isopter.model.answer.movement.CoverMethod;
import org.isopter.model.answer.movement.DoubleVision;
import org.isopter.model.answer.movement.FixationDistance;
import org.isopter.model.answer.movement.GazeDirection;
import org.isopter.model.answer.movement.Separation;
import org.isopter.model.answer.pupil.Sweating;
import org.isopter.model.answer.tissue.Presence;
import org.isopter.model.catalogue.Alignments;
import org.isopter.model.catalogue.Control;
import org.isopter.model.catalogue.Lids;
import org.isopter.model.catalogue.Movements;
import org.isopter.model.exam.Fact;
import org.isopter.model.value.Outcome;
import org.isopter.model.value.Site;
import org.isopter.model.value.Unit;

/** Movements, alignment and lids. */
final class OrbitSteps {

  /** A lid that hangs by so many millimetres covers the pupil: nothing is seen double. */
  private static final int COVERS = 5;

  private OrbitSteps() {}

  static void add(Visit visit) {
    InventedPerson person = visit.person;
    if (visit.done(VisitStep.MOVEMENTS, Movements.DUCTIONS, Movements.DIPLOPIA)) {
      for (Site eye : Site.EACH_EYE) {
        visit.add(Fact.of(Movements.DUCTIONS, eye, ductions(person, eye)));
      }
      Fact<?> diplopia = Fact.of(Movements.DIPLOPIA, Site.BOTH, diplopia(person));
      visit.add(
          isCovered(person) ? diplopia.remarks(List.of("The lid covers the pupil.")) : diplopia);
      visit.add(
          Fact.of(Alignments.DEVIATION, Site.BOTH, deviation(person))
              .by(CoverMethod.COVER_UNCOVER));
    }
    if (visit.done(VisitStep.LIDS, Lids.PTOSIS)) {
      Site.EACH_EYE.forEach(eye -> lid(visit, eye));
    }
  }

  private static Movements.Ductions ductions(InventedPerson person, Site eye) {
    boolean palsy = person.has(Group.THIRD_NERVE, eye);
    GazeDirection inward = eye == Site.RIGHT ? GazeDirection.LEFT : GazeDirection.RIGHT;
    GazeDirection outward = eye == Site.RIGHT ? GazeDirection.RIGHT : GazeDirection.LEFT;
    Map<GazeDirection, Outcome<Integer>> grades = new EnumMap<>(GazeDirection.class);
    grades.put(inward, Outcome.found(palsy ? -3 : 0));
    grades.put(outward, Outcome.found(0));
    grades.put(GazeDirection.UP, Outcome.found(palsy ? -3 : 0));
    grades.put(GazeDirection.DOWN, Outcome.found(palsy ? -2 : 0));
    return new Movements.Ductions(grades);
  }

  private static boolean isCovered(InventedPerson person) {
    return person.group == Group.THIRD_NERVE && person.ptosis >= COVERS;
  }

  private static Movements.Diplopia diplopia(InventedPerson person) {
    boolean twice = person.group == Group.THIRD_NERVE && !isCovered(person);
    return twice
        ? new Movements.Diplopia(
            DoubleVision.BINOCULAR, Optional.of(Separation.OBLIQUE), Optional.empty())
        : new Movements.Diplopia(DoubleVision.NONE, Optional.empty(), Optional.empty());
  }

  private static Alignments.Deviation deviation(InventedPerson person) {
    Alignment alignment =
        switch (person.group) {
          case AMBLYOPIA -> Alignment.ESO;
          case THIRD_NERVE -> Alignment.EXO;
          default -> Alignment.STRAIGHT;
        };
    return new Alignments.Deviation(
        alignment,
        alignment == Alignment.STRAIGHT ? Optional.empty() : Optional.of(Control.MANIFEST),
        Optional.empty(),
        Optional.of(FixationDistance.FAR));
  }

  private static void lid(Visit visit, Site eye) {
    InventedPerson person = visit.person;
    boolean droops = person.has(Group.THIRD_NERVE, eye) || person.has(Group.HORNER, eye);
    double height = visit.of(eye, Measure.LID) - (droops ? person.ptosis : 0);
    visit.add(
        Fact.of(Lids.MARGIN_REFLEX, eye, WrittenNumbers.quantity(height, 0.5, 1, Unit.MILLIMETRE)));
    visit.add(
        Fact.of(
            Lids.PTOSIS,
            eye,
            droops
                ? new Lids.Ptosis(
                    Presence.PRESENT,
                    Optional.of(WrittenNumbers.quantity(person.ptosis, 0.5, 1, Unit.MILLIMETRE)))
                : new Lids.Ptosis(Presence.ABSENT, Optional.empty())));
    if (person.group == Group.HORNER) {
      boolean dry = person.shows(Group.HORNER, Likelihood.HORNER_SWEAT) && person.affected(eye);
      visit.add(Fact.of(Lids.SWEATING, eye, dry ? Sweating.REDUCED : Sweating.NORMAL));
    }
  }
}
