package org.isopter.task.calculate;

import java.util.Arrays;
import java.util.List;
import java.util.OptionalDouble;
import org.isopter.model.catalogue.AcuityReading;
import org.isopter.model.clinical.acuity.AcuityScale;
import org.isopter.model.clinical.acuity.LowVisionConvention;
import org.isopter.model.clinical.impairment.DrivingRule;
import org.isopter.model.clinical.impairment.DrivingVision;
import org.isopter.model.clinical.impairment.VisionImpairments;
import org.isopter.model.clinical.statement.Statement;
import org.isopter.model.value.Acuity;
import org.isopter.model.value.Fault;
import org.isopter.model.value.Quantity;
import org.isopter.model.value.Result;
import org.isopter.model.value.Unit;

/** Calculations of acuities. */
final class AcuityCalculations {

  private AcuityCalculations() {}

  /** Holds one acuity against the rules with one figure, and two against those with two. */
  static Result<List<Statement>> driving(List<String> values) {
    return BedsideValues.acuity(values.get(0))
        .flatMap(
            first ->
                values.size() == 1
                    ? Result.ok(together(first))
                    : BedsideValues.acuity(values.get(1)).flatMap(second -> apart(first, second)));
  }

  private static List<Statement> together(AcuityReading both) {
    return Arrays.stream(DrivingRule.values())
        .filter(rule -> rule.worse().isEmpty())
        .map(rule -> DrivingVision.acuity(rule, both).statement())
        .toList();
  }

  private static Result<List<Statement>> apart(AcuityReading better, AcuityReading worse) {
    if (isBetter(worse.acuity(), better.acuity())) {
      return Result.refused(
          Fault.of("", better.acuity() + " " + worse.acuity(), "the better eye first"));
    }
    return Result.ok(
        Arrays.stream(DrivingRule.values())
            .filter(rule -> rule.worse().isPresent())
            .map(rule -> DrivingVision.acuity(rule, better, worse).statement())
            .toList());
  }

  /** Low vision has no number, and is never the better of the two where the other has one. */
  private static boolean isBetter(Acuity one, Acuity other) {
    OptionalDouble first = AcuityScale.logMar(one);
    OptionalDouble second = AcuityScale.logMar(other);
    return first.isPresent()
        && (other instanceof Acuity.Low
            || (second.isPresent() && first.getAsDouble() < second.getAsDouble()));
  }

  /** Print at 40 cm, the one distance that the rule speaks of. */
  static Result<List<Statement>> nearImpairment(List<String> values) {
    return BedsideValues.acuity(values.get(0))
        .map(reading -> reading.from(Quantity.of("40", Unit.CENTIMETRE)))
        .map(reading -> List.of(VisionImpairments.near(reading).statement()));
  }

  static Result<List<Statement>> lowVision(List<String> values) {
    return BedsideValues.acuity(values.get(0))
        .flatMap(
            reading ->
                reading.acuity() instanceof Acuity.Low low
                    ? Result.ok(conventions(low))
                    : Result.refused(
                        Fault.of("", values.get(0), "CF with its distance, HM, LP or NLP")));
  }

  private static List<Statement> conventions(Acuity.Low low) {
    return Arrays.stream(LowVisionConvention.values())
        .map(convention -> convention.logMar(low).statement())
        .toList();
  }
}
