package org.isopter.mapper.table;

import java.util.Optional;
import org.isopter.model.catalogue.Refractions.Refraction;
import org.isopter.model.clinical.lens.Lens;
import org.isopter.model.clinical.lens.PowerVector;
import org.isopter.model.exam.Fact;

/** Refractions as power vectors, whose components may be averaged as axes may not. */
final class PowerVectors {

  private PowerVectors() {}

  /** Returns the vector of a refraction; empty where nothing was measured, or something else. */
  static Optional<PowerVector> of(Fact<?> fact) {
    return fact.outcome()
        .fold(
            value ->
                value instanceof Refraction refraction
                    ? Optional.of(PowerVector.of(Lens.of(refraction).orThrow()))
                    : Optional.empty(),
            absent -> Optional.empty());
  }
}
