package org.isopter.model.simulate;

import java.time.OffsetDateTime;
import java.util.List;
import java.util.Optional;
import org.isopter.model.answer.sight.RefractionMethod;
import org.isopter.model.answer.tissue.AnteriorSign;
import org.isopter.model.answer.tissue.Presence;
import org.isopter.model.answer.tissue.SegmentMethod;
import org.isopter.model.answer.tissue.Tonometry;
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

  private static final double SHARP = 0.05;
  private static final double LEAST_SPHERE = -0.75;

  private FrontSteps() {}

  static void add(Visit visit, OffsetDateTime performed) {
    if (visit.done(Step.PRESSURE, Pressures.INTRAOCULAR)) {
      pressure(visit, performed);
    }
    if (visit.done(Step.REFRACTION, Refractions.REFRACTION)) {
      RefractionMethod picked = visit.draw.pick(REFRACTED);
      // Choosing between lenses needs sight.
      boolean blind = Site.EACH_EYE.stream().anyMatch(eye -> visit.vision(eye) == Vision.NONE);
      boolean chosen = picked == RefractionMethod.SUBJECTIVE;
      RefractionMethod method = blind && chosen ? RefractionMethod.RETINOSCOPY : picked;
      for (Site eye : Site.EACH_EYE) {
        visit.add(Fact.of(Refractions.REFRACTION, eye, refraction(visit, eye)).by(method));
      }
    }
    if (visit.done(Step.LENS)) {
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

  private static Presence opacity(Person person, Site eye) {
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
      Quantity value = Numbers.quantity(visit.of(eye, Measure.PRESSURE), 1, 0, Unit.MM_HG);
      Fact<Quantity> plain = Fact.of(Pressures.INTRAOCULAR, eye, value).by(method);
      Fact<Quantity> timed = own.map(plain::at).orElse(plain);
      visit.addRemarked(device.map(timed::with).orElse(timed), Phrases.PRESSURE_REMARKS);
    }
  }

  /** An eye that reads 6/6 without glasses needs no strong minus lens. */
  private static double sphere(Visit visit, Site eye) {
    boolean sharp = visit.person.group == Group.REFRACTIVE && visit.of(eye, Measure.ACUITY) < SHARP;
    double sphere = visit.of(eye, Measure.SPHERE);
    return sharp ? Math.max(sphere, LEAST_SPHERE) : sphere;
  }

  private static Refractions.Refraction refraction(Visit visit, Site eye) {
    return new Refractions.Refraction(
        Numbers.quantity(sphere(visit, eye), 0.25, 2, Unit.DIOPTRE),
        Optional.of(
            new Refractions.Cylinder(
                Numbers.quantity(visit.of(eye, Measure.CYLINDER), 0.25, 2, Unit.DIOPTRE),
                Numbers.quantity(visit.person.axis.of(eye), 1, 0, Unit.DEGREE))),
        Optional.empty(),
        Optional.empty(),
        Optional.empty(),
        Optional.empty(),
        Optional.empty());
  }
}
