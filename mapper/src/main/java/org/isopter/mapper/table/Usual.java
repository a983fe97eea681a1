package org.isopter.mapper.table;

import java.math.BigDecimal;
import java.math.MathContext;
import java.util.Map;
import java.util.Optional;
import org.isopter.model.clinical.statement.Numbers;
import org.isopter.model.finding.Datum;
import org.isopter.model.finding.Spec;
import org.isopter.model.value.Quantity;
import org.isopter.model.value.Unit;

/**
 * A datum as one number in the usual unit of its spec, so that the numbers of a column compare.
 *
 * <p>A unit of another kind (an edge in mm where degrees are usual) is no number in the usual unit;
 * such a datum keeps its own.
 */
final class Usual {

  private static final Map<Unit, BigDecimal> SECONDS =
      Map.of(Unit.SECOND, BigDecimal.ONE, Unit.MINUTE, new BigDecimal(60));

  private Usual() {}

  /** Returns the number and its unit; empty where the datum is no number. */
  static Optional<Quantity> of(Spec spec, Datum datum) {
    return datum.fold(
        new Datum.Cases<>() {
          @Override
          public Optional<Quantity> measure(Datum.Measure measure) {
            Quantity own = new Quantity(measure.value(), measure.unit());
            return Optional.of(in(unit(spec).orElse(measure.unit()), own).orElse(own));
          }

          @Override
          public Optional<Quantity> count(Datum.Count count) {
            return Optional.of(new Quantity(BigDecimal.valueOf(count.value()), Unit.ONE));
          }

          @Override
          public Optional<Quantity> coded(Datum.Coded coded) {
            return Optional.empty();
          }

          @Override
          public Optional<Quantity> truth(Datum.Truth truth) {
            return Optional.empty();
          }

          @Override
          public Optional<Quantity> text(Datum.Text text) {
            return Optional.empty();
          }

          @Override
          public Optional<Quantity> ratio(Datum.Ratio ratio) {
            BigDecimal quotient =
                ratio.numerator().divide(ratio.denominator(), MathContext.DECIMAL64);
            return Optional.of(new Quantity(quotient, Unit.ONE));
          }
        });
  }

  /** Returns the unit of the numbers of a spec; empty where it has none. */
  static Optional<Unit> unit(Spec spec) {
    return spec instanceof Spec.Measure measure
        ? Optional.of(measure.spans().get(0).unit())
        : spec instanceof Spec.Count || spec instanceof Spec.Ratio
            ? Optional.of(Unit.ONE)
            : Optional.empty();
  }

  private static Optional<Quantity> in(Unit wanted, Quantity own) {
    if (own.unit().equals(wanted)) {
      return Optional.of(own);
    }
    return size(wanted)
        .flatMap(
            one ->
                inBase(own)
                    .map(base -> new Quantity(base.divide(one, MathContext.DECIMAL64), wanted)))
        .filter(converted -> isTime(wanted) == isTime(own.unit()));
  }

  private static Optional<BigDecimal> size(Unit unit) {
    return inBase(new Quantity(BigDecimal.ONE, unit));
  }

  private static Optional<BigDecimal> inBase(Quantity own) {
    return Numbers.metres(own)
        .or(() -> Optional.ofNullable(SECONDS.get(own.unit())).map(own.value()::multiply));
  }

  private static boolean isTime(Unit unit) {
    return SECONDS.containsKey(unit);
  }
}
