package org.isopter.model.derive;

import java.math.BigDecimal;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import org.isopter.model.catalogue.Acuities;
import org.isopter.model.catalogue.AcuityReading;
import org.isopter.model.clinical.acuity.AcuityEquivalents;
import org.isopter.model.clinical.acuity.AcuityScale;
import org.isopter.model.clinical.acuity.NearAcuity;
import org.isopter.model.clinical.acuity.PartialLine;
import org.isopter.model.clinical.acuity.PinholeComparison;
import org.isopter.model.clinical.acuity.UnusualLine;
import org.isopter.model.clinical.statement.Answer;
import org.isopter.model.exam.ExamView;
import org.isopter.model.exam.Seen;
import org.isopter.model.value.Acuity;
import org.isopter.model.value.Unit;

/** What follows from acuities: the same angle in other notations, and what a pinhole did. */
final class AcuityDerivations {

  private AcuityDerivations() {}

  static Stream<Derived> of(ExamView facts) {
    List<Seen<AcuityReading>> distance = facts.seen(Acuities.DISTANCE).toList();
    List<Seen<AcuityReading>> pinhole = facts.seen(Acuities.PINHOLE).toList();
    return Stream.of(
            Stream.concat(distance.stream(), pinhole.stream()).flatMap(AcuityDerivations::lines),
            pinhole.stream().flatMap(through -> pinhole(through, distance).stream()),
            facts.seen(Acuities.NEAR).flatMap(seen -> near(seen).stream()))
        .flatMap(all -> all);
  }

  private static Stream<Derived> lines(Seen<AcuityReading> seen) {
    Acuity acuity = seen.value().acuity();
    if (acuity instanceof Acuity.NotImproved) {
      return Stream.empty();
    }
    Optional<Derived> alike =
        seen.value().isInPart() ? Optional.empty() : Optional.of(equivalents(seen));
    return Stream.of(alike, letters(seen), unusual(seen)).flatMap(Optional::stream);
  }

  private static Derived equivalents(Seen<AcuityReading> seen) {
    Answer<BigDecimal> logMar =
        AcuityEquivalents.of(seen.value().acuity()).map(AcuityEquivalents.Equivalents::logMar);
    Derived said = Derived.of(logMar.statement(), seen.site(), seen);
    // The logMAR of the full line is not that of the acuity when letters were added or missed.
    return suffix(seen).isPresent() ? said : said.value(logMar.value(), Unit.LOGMAR);
  }

  private static Optional<Derived> letters(Seen<AcuityReading> seen) {
    return suffix(seen)
        .map(line -> PartialLine.logMar(seen.value()))
        .map(
            answer ->
                Derived.of(answer.statement(), seen.site(), seen)
                    .value(answer.value(), Unit.LOGMAR));
  }

  private static Optional<Derived> unusual(Seen<AcuityReading> seen) {
    return seen.value().acuity() instanceof Acuity.Fraction line
        ? UnusualLine.remark(line).map(remark -> Derived.of(remark, seen.site(), seen))
        : Optional.empty();
  }

  private static Optional<Acuity> suffix(Seen<AcuityReading> seen) {
    return Optional.of(seen.value().acuity()).filter(any -> AcuityScale.suffix(seen.value()) != 0);
  }

  private static Optional<Derived> pinhole(
      Seen<AcuityReading> through, List<Seen<AcuityReading>> distance) {
    List<Seen<AcuityReading>> eye =
        distance.stream().filter(seen -> seen.site() == through.site()).toList();
    List<Seen<AcuityReading>> alike =
        eye.stream()
            .filter(seen -> seen.value().correction().equals(through.value().correction()))
            .toList();
    return only(alike)
        .or(() -> only(eye))
        .map(
            without ->
                Derived.of(
                    PinholeComparison.of(without.value(), through.value()).statement(),
                    through.site(),
                    without,
                    through));
  }

  private static Optional<Seen<AcuityReading>> only(List<Seen<AcuityReading>> some) {
    return some.size() == 1 ? Optional.of(some.get(0)) : Optional.empty();
  }

  private static Optional<Derived> near(Seen<AcuityReading> seen) {
    AcuityReading reading = seen.value();
    if (reading.isInPart() && reading.acuity() instanceof Acuity.MUnits) {
      return Optional.of(Derived.of(PartialLine.logMar(reading).statement(), seen.site(), seen));
    }
    return near(reading)
        .map(
            answer ->
                Derived.of(answer.statement(), seen.site(), seen)
                    .value(answer.value().map(NearAcuity.Equivalents::logMar), Unit.LOGMAR));
  }

  private static Optional<Answer<NearAcuity.Equivalents>> near(AcuityReading reading) {
    if (reading.acuity() instanceof Acuity.MUnits print) {
      return Optional.of(NearAcuity.of(print, reading.distance()));
    }
    return reading.acuity() instanceof Acuity.Jaeger print
        ? Optional.of(NearAcuity.of(print))
        : Optional.empty();
  }
}
