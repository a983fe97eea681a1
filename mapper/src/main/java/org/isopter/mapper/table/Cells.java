package org.isopter.mapper.table;

import java.util.Optional;
import org.isopter.model.finding.Datum;
import org.isopter.model.finding.DatumTexts;
import org.isopter.model.finding.Spec;
import org.isopter.model.value.Unit;

/** How a datum stands in a column that was made for its spec. */
final class Cells {

  private static final Spec.Cases<Kind> KINDS =
      new Spec.Cases<>() {
        @Override
        public Kind measure(Spec.Measure spec) {
          return Kind.NUMBER;
        }

        @Override
        public Kind count(Spec.Count spec) {
          return Kind.INTEGER;
        }

        @Override
        public Kind coded(Spec.Coded spec) {
          return Kind.TEXT;
        }

        @Override
        public Kind truth(Spec.Truth spec) {
          return Kind.TRUTH;
        }

        @Override
        public Kind text(Spec.Text spec) {
          return Kind.TEXT;
        }

        @Override
        public Kind ratio(Spec.Ratio spec) {
          return Kind.NUMBER;
        }
      };

  private Cells() {}

  static Kind kind(Spec spec) {
    return spec.fold(KINDS);
  }

  /** Returns the cell; empty for a number of a unit that is of another kind than the column's. */
  static Optional<?> of(Spec spec, Datum datum) {
    return switch (kind(spec)) {
      case NUMBER -> number(spec, datum);
      case INTEGER ->
          datum instanceof Datum.Count count ? Optional.of((long) count.value()) : none();
      case TRUTH -> datum instanceof Datum.Truth truth ? Optional.of(truth.value()) : none();
      default -> Optional.of(DatumTexts.of(datum));
    };
  }

  private static Optional<Double> number(Spec spec, Datum datum) {
    Optional<Unit> unit = Usual.unit(spec);
    return Usual.of(spec, datum)
        .filter(number -> Optional.of(number.unit()).equals(unit))
        .map(number -> number.value().doubleValue());
  }

  private static Optional<?> none() {
    return Optional.empty();
  }
}
