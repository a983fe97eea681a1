package org.isopter.model.simulate;

import java.time.OffsetDateTime;
import java.util.List;
import java.util.Optional;
import org.isopter.model.answer.sight.RefractionMethod;
import org.isopter.model.answer.tissue.AnteriorSign;
import org.isopter.model.answer.tissue.Presence;
import org.isopter.model.answer.tissue.SegmentMethod;
import org.isopter.model.answer.tissue.Tonometry;
import org.isopter.model.catalogue.Corneas;
import org.isopter.model.catalogue.Pressures;
import org.isopter.model.catalogue.Refractions;
import org.isopter.model.catalogue.Segments;
import org.isopter.model.exam.Fact;
import org.isopter.model.value.Quantity;
import org.isopter.model.value.Site;
import org.isopter.model.value.Unit;

/** Pressure, refraction and lens. */
final class FrontSteps {

  private static final List<Tonometry> METHODS =
      List.of(Tonometry.GOLDMANN, Tonometry.GOLDMANN, Tonometry.REBOUND, Tonometry.NON_CONTACT);
  private static final List<RefractionMethod> REFRACTED =
      List.of(
          RefractionMethod.SUBJECTIVE,
          RefractionMethod.AUTOREFRACTION,
          RefractionMethod.RETINOSCOPY);

  private FrontSteps() {}

  static void add(Visit visit, OffsetDateTime performed) {
    if (visit.done(VisitStep.PRESSURE, Pressures.INTRAOCULAR)) {
      pressure(visit, performed);
      if (visit.draw.chance(Relation.THICKNESS_MEASURED)) {
        thickness(visit);
      }
    }
    if (visit.done(VisitStep.REFRACTION, Refractions.REFRACTION)) {
      RefractionMethod picked = visit.draw.pick(REFRACTED);
      // Choosing between lenses needs sight.
      boolean blind = Site.EACH_EYE.stream().anyMatch(eye -> visit.vision(eye) == Vision.NONE);
      boolean chosen = picked == RefractionMethod.SUBJECTIVE;
      RefractionMethod method = blind && chosen ? RefractionMethod.RETINOSCOPY : picked;
      for (Site eye : Site.EACH_EYE) {
        visit.add(Fact.of(Refractions.REFRACTION, eye, refraction(visit, eye)).by(method));
      }
    }
    if (visit.done(VisitStep.LENS)) {
      for (Site eye : Site.EACH_EYE) {
        visit.add(
            Fact.of(
                    Segments.ANTERIOR,
                    eye,
                    new Segments.Sign<>(AnteriorSign.LENS_OPACITY, opacity(visit.person, eye)))
                .by(SegmentMethod.SLIT_LAMP));
      }
    }
  }

  private static Presence opacity(InventedPerson person, Site eye) {
    return person.has(Group.CATARACT, eye) ? Presence.PRESENT : Presence.ABSENT;
  }

  private static void pressure(Visit visit, OffsetDateTime performed) {
    Draw draw = visit.draw;
    Tonometry method = draw.pick(METHODS);
    Optional<OffsetDateTime> own =
        draw.chance(Likelihood.OWN_TIME)
            ? Optional.of(performed.plusMinutes(draw.between(5, 40)))
            : Optional.empty();
    Optional<String> device =
        draw.chance(Likelihood.DEVICE) ? Optional.of(draw.pick(Phrases.DEVICES)) : Optional.empty();
    for (Site eye : Site.EACH_EYE) {
      Quantity value = WrittenNumbers.quantity(read(visit, eye, method), 1, 0, Unit.MM_HG);
      Fact<Quantity> plain = Fact.of(Pressures.INTRAOCULAR, eye, value).by(method);
      Fact<Quantity> timed = own.map(plain::at).orElse(plain);
      visit.addRemarked(device.map(timed::with).orElse(timed), Phrases.PRESSURE_REMARKS);
    }
  }

  /** A thick cornea makes a tonometer read high, one more than another. */
  private static double read(Visit visit, Site eye, Tonometry method) {
    Relation slope =
        switch (method) {
          case REBOUND -> Relation.REBOUND;
          case NON_CONTACT -> Relation.NON_CONTACT;
          default -> Relation.GOLDMANN;
        };
    double thicker = visit.person.thickness.of(eye) - Relation.THICKNESS.number();
    return Measure.PRESSURE.cut(visit.of(eye, Measure.PRESSURE) + slope.number() * thicker / 10);
  }

  private static void thickness(Visit visit) {
    for (Site eye : Site.EACH_EYE) {
      Quantity value =
          WrittenNumbers.quantity(visit.person.thickness.of(eye), 1, 0, Unit.MICROMETRE);
      visit.add(Fact.of(Corneas.THICKNESS, eye, value));
    }
  }

  private static Refractions.Refraction refraction(Visit visit, Site eye) {
    return new Refractions.Refraction(
        WrittenNumbers.quantity(visit.of(eye, Measure.SPHERE), 0.25, 2, Unit.DIOPTRE),
        Optional.of(
            new Refractions.Cylinder(
                WrittenNumbers.quantity(visit.of(eye, Measure.CYLINDER), 0.25, 2, Unit.DIOPTRE),
                WrittenNumbers.quantity(visit.person.axis.of(eye), 1, 0, Unit.DEGREE))),
        Optional.empty(),
        Optional.empty(),
        Optional.empty(),
        Optional.empty(),
        Optional.empty());
  }
}
