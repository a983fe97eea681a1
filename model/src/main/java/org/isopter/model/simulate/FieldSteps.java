package org.isopter.model.simulate;

import java.util.EnumMap;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import org.isopter.model.answer.sight.FieldMethod;
import org.isopter.model.answer.sight.FieldRegion;
import org.isopter.model.answer.sight.FieldResponse;
import org.isopter.model.answer.sight.FieldTarget;
import org.isopter.model.catalogue.Fields;
import org.isopter.model.catalogue.Perimetry;
import org.isopter.model.exam.Fact;
import org.isopter.model.finding.Finding;
import org.isopter.model.value.Absence;
import org.isopter.model.value.Outcome;
import org.isopter.model.value.Quantity;
import org.isopter.model.value.Site;
import org.isopter.model.value.Unit;

/** The field by confrontation and by perimetry. */
final class FieldSteps {

  private static final Set<FieldRegion> TEMPORAL =
      Set.of(FieldRegion.SUPEROTEMPORAL, FieldRegion.INFEROTEMPORAL);
  private static final Set<FieldRegion> NASAL =
      Set.of(FieldRegion.SUPERONASAL, FieldRegion.INFERONASAL);
  private static final Set<Group> WITH_LOSS =
      Set.of(Group.GLAUCOMA, Group.CHIASM, Group.STROKE, Group.NEUROPATHY, Group.PAPILLOEDEMA);

  private FieldSteps() {}

  static void add(Visit visit) {
    if (visit.done(VisitStep.CONFRONTATION, Fields.CONFRONTATION)) {
      Site.EACH_EYE.forEach(eye -> visit.add(confrontation(visit, eye)));
    }
    boolean meant =
        WITH_LOSS.contains(visit.person.group) || visit.draw.chance(Likelihood.PERIMETRY_ELSEWHERE);
    if (meant && visit.done(VisitStep.PERIMETRY, Perimetry.MEAN_DEVIATION)) {
      Site.EACH_EYE.forEach(eye -> perimetry(visit, eye));
    }
  }

  private static Fact<?> confrontation(Visit visit, Site eye) {
    if (visit.vision(eye) == Vision.NONE) {
      return Fact.absent(Fields.CONFRONTATION, eye, Absence.NOT_APPLICABLE);
    }
    Set<FieldRegion> lost = lost(visit.person, eye);
    FieldResponse left =
        visit.person.group != Group.NEUROPATHY && visit.draw.chance(Likelihood.REGION_ABSENT)
            ? FieldResponse.ABSENT
            : FieldResponse.REDUCED;
    Map<FieldRegion, Outcome<FieldResponse>> regions = new EnumMap<>(FieldRegion.class);
    for (FieldRegion region : FieldRegion.values()) {
      regions.put(region, Outcome.found(lost.contains(region) ? left : FieldResponse.FULL));
    }
    return Fact.of(
            Fields.CONFRONTATION,
            eye,
            new Fields.Confrontation(
                regions,
                Optional.of(target(visit.vision(eye))),
                Optional.of(Quantity.of("60", Unit.CENTIMETRE))))
        .by(FieldMethod.CONFRONTATION);
  }

  private static Set<FieldRegion> lost(InventedPerson person, Site eye) {
    if (person.shows(Group.CHIASM, Likelihood.CHIASM_FIELD)) {
      return TEMPORAL;
    }
    if (person.shows(Group.STROKE, Likelihood.STROKE_FIELD)) {
      return eye == person.side ? TEMPORAL : NASAL;
    }
    if (person.shows(Group.NEUROPATHY, Likelihood.NEUROPATHY_FIELD) && person.affected(eye)) {
      return Set.of(FieldRegion.CENTRAL);
    }
    return person.shows(Group.GLAUCOMA, Likelihood.GLAUCOMA_FIELD)
        ? Set.of(FieldRegion.SUPERONASAL)
        : Set.of();
  }

  private static FieldTarget target(Vision vision) {
    return switch (vision) {
      case CHART, FINGERS -> FieldTarget.FINGER_COUNTING;
      case HAND -> FieldTarget.HAND;
      case LIGHT, NONE -> FieldTarget.LIGHT;
    };
  }

  private static void perimetry(Visit visit, Site eye) {
    if (visit.of(eye, Measure.ACUITY) > 1) {
      visit.add(Fact.absent(Perimetry.MEAN_DEVIATION, eye, Absence.UNABLE));
      return;
    }
    double deviation = visit.of(eye, Measure.MEAN_DEVIATION);
    double loss = Math.max(0, -deviation);
    double uneven = Math.min(15, 1.6 + 0.6 * loss + 0.3 * Math.abs(visit.draw.normal()));
    add(visit, Perimetry.MEAN_DEVIATION, eye, WrittenNumbers.digits(deviation, 2));
    add(visit, Perimetry.PATTERN_DEVIATION, eye, WrittenNumbers.digits(uneven, 2));
    add(
        visit,
        Perimetry.FIELD_INDEX,
        eye,
        WrittenNumbers.digits(Math.min(100, 102 - 2.8 * loss), 0));
    add(
        visit,
        Perimetry.FIXATION_LOSSES,
        eye,
        WrittenNumbers.outOf(visit.draw.between(0, 4), visit.draw.between(13, 18)));
  }

  private static <V> void add(Visit visit, Finding<V> finding, Site eye, V value) {
    visit.add(Fact.of(finding, eye, value).by(FieldMethod.PERIMETRY));
  }
}
