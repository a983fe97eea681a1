package org.isopter.model.derive;

import java.math.BigDecimal;
import java.util.stream.Stream;
import org.isopter.model.catalogue.Refractions;
import org.isopter.model.clinical.lens.Lens;
import org.isopter.model.clinical.lens.LensAnswers;
import org.isopter.model.clinical.statement.Answer;
import org.isopter.model.exam.ExamView;
import org.isopter.model.exam.Seen;
import org.isopter.model.value.Unit;

/** What follows from a refraction: its spherical equivalent and its power vector. */
final class LensDerivations {

  private LensDerivations() {}

  static Stream<Derived> of(ExamView facts) {
    return facts.seen(Refractions.REFRACTION).flatMap(LensDerivations::lens);
  }

  /** The record admits axes of 1 to 180 degrees only, so that it always gives a lens. */
  private static Stream<Derived> lens(Seen<Refractions.Refraction> seen) {
    Lens lens = Lens.of(seen.value()).orThrow();
    Answer<BigDecimal> equivalent = LensAnswers.sphericalEquivalent(lens);
    return Stream.of(
        Derived.of(equivalent.statement(), seen.site(), seen)
            .value(equivalent.value(), Unit.DIOPTRE),
        Derived.of(LensAnswers.powerVector(lens).statement(), seen.site(), seen));
  }
}
