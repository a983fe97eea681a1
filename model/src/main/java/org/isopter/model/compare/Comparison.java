package org.isopter.model.compare;

import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import org.isopter.model.answer.sight.Chart;
import org.isopter.model.catalogue.Acuities;
import org.isopter.model.catalogue.AcuityReading;
import org.isopter.model.clinical.acuity.AcuityChange;
import org.isopter.model.clinical.acuity.PartialLine;
import org.isopter.model.clinical.acuity.RetestLimit;
import org.isopter.model.clinical.statement.Statement;
import org.isopter.model.exam.Exam;
import org.isopter.model.exam.Fact;
import org.isopter.model.exam.Party;
import org.isopter.model.finding.Datum;
import org.isopter.model.finding.DatumTexts;
import org.isopter.model.finding.EncodedValue;
import org.isopter.model.summary.FactWords;
import org.isopter.model.value.Acuity;
import org.isopter.model.value.Fault;
import org.isopter.model.value.Quantity;
import org.isopter.model.value.Result;
import org.isopter.model.value.Unit;

/**
 * What changed between two examinations of one person, finding by finding and eye by eye.
 *
 * @param earlier the earlier examination
 * @param later the later examination
 * @param changes each finding of either, those of the later first in its order
 */
public record Comparison(Exam earlier, Exam later, List<Change> changes) {

  /**
   * Compares two examinations; which is earlier follows from when they were performed.
   *
   * <p>Refused when they are not certainly of one person: the identifiers differ, or neither both
   * identifiers nor both names are there to compare.
   */
  public static Result<Comparison> of(Exam one, Exam other) {
    boolean inOrder = !one.header().performed().isAfter(other.header().performed());
    Exam earlier = inOrder ? one : other;
    Exam later = inOrder ? other : one;
    return isSamePerson(one.header().subject(), other.header().subject())
        ? Result.ok(new Comparison(earlier, later, changes(earlier, later)))
        : Result.refused(
            new Fault(
                "subject",
                "two people who are not certainly the same",
                "two records of one person",
                "compare records whose subject has the same identifier"));
  }

  private static boolean isSamePerson(Party one, Party other) {
    if (one.identifier().isPresent() && other.identifier().isPresent()) {
      return one.identifier().equals(other.identifier());
    }
    return one.name().isPresent() && one.name().equals(other.name());
  }

  private static List<Change> changes(Exam earlier, Exam later) {
    Map<String, Fact<?>> before = named(earlier);
    Map<String, Fact<?>> now = named(later);
    Set<String> names = new LinkedHashSet<>(now.keySet());
    names.addAll(before.keySet());
    List<Change> changes = new ArrayList<>();
    for (String name : names) {
      changes.add(
          change(Optional.ofNullable(before.get(name)), Optional.ofNullable(now.get(name))));
    }
    return changes;
  }

  /**
   * Facts meet when finding, eye, condition and number agree; their times are those of two days.
   */
  private static Map<String, Fact<?>> named(Exam exam) {
    Map<String, Integer> seen = new HashMap<>();
    Map<String, Fact<?>> named = new LinkedHashMap<>();
    for (Fact<?> fact : exam.facts()) {
      String name = name(fact);
      named.put(name + "|" + seen.merge(name, 1, Integer::sum), fact);
    }
    return named;
  }

  private static String name(Fact<?> fact) {
    StringBuilder name = new StringBuilder(fact.finding().id() + "|" + fact.site().word());
    for (String part : fact.finding().distinguishing()) {
      fact.panel()
          .flatMap(panel -> panel.found(part))
          .ifPresent(datum -> name.append("|").append(DatumTexts.of(datum)));
    }
    return name.toString();
  }

  private static Change change(Optional<Fact<?>> before, Optional<Fact<?>> now) {
    Fact<?> any = now.or(() -> before).orElseThrow();
    Change.Kind kind = kind(before, now);
    return new Change(
        any.finding(),
        any.site(),
        kind,
        before.map(FactWords::of).orElse(""),
        now.map(FactWords::of).orElse(""),
        before.flatMap(one -> now.flatMap(other -> difference(one, other))),
        before.flatMap(one -> now.flatMap(other -> verdict(one, other))));
  }

  private static Change.Kind kind(Optional<Fact<?>> before, Optional<Fact<?>> now) {
    if (before.isEmpty()) {
      return Change.Kind.ONLY_NOW;
    }
    if (now.isEmpty()) {
      return Change.Kind.ONLY_BEFORE;
    }
    boolean same = before.get().outcome().equals(now.get().outcome());
    return same ? Change.Kind.SAME : Change.Kind.DIFFERENT;
  }

  private static Optional<Quantity> difference(Fact<?> before, Fact<?> now) {
    Optional<AcuityReading> one = acuity(before);
    if (one.isPresent()) {
      return acuity(now)
          .flatMap(
              later ->
                  PartialLine.logMar(one.get())
                      .value()
                      .flatMap(
                          first -> PartialLine.logMar(later).value().map(n -> n.subtract(first))))
          .map(apart -> new Quantity(apart, Unit.LOGMAR));
    }
    return measure(before).flatMap(first -> measure(now).flatMap(next -> difference(first, next)));
  }

  private static Optional<Quantity> difference(Datum.Measure before, Datum.Measure now) {
    BigDecimal apart = now.value().subtract(before.value());
    return before.unit().equals(now.unit())
        ? Optional.of(new Quantity(apart, now.unit()))
        : Optional.empty();
  }

  private static Optional<Datum.Measure> measure(Fact<?> fact) {
    return fact.panel()
        .flatMap(EncodedValue::value)
        .filter(Datum.Measure.class::isInstance)
        .map(Datum.Measure.class::cast);
  }

  /** Only acuity at distance has a published limit that is carried here. */
  private static Optional<Statement> verdict(Fact<?> before, Fact<?> now) {
    if (now.finding() != Acuities.DISTANCE) {
      return Optional.empty();
    }
    return acuity(before)
        .flatMap(
            one ->
                acuity(now)
                    .map(two -> AcuityChange.between(one, two, limit(one, two)).statement()));
  }

  private static RetestLimit limit(AcuityReading one, AcuityReading two) {
    return isScoredByLetters(one) && isScoredByLetters(two)
        ? RetestLimit.LETTERS_IN_FOCUS
        : RetestLimit.FIVE_ROWS;
  }

  private static boolean isScoredByLetters(AcuityReading reading) {
    return reading.acuity() instanceof Acuity.Letters
        || reading.chart().equals(Optional.of(Chart.ETDRS));
  }

  private static Optional<AcuityReading> acuity(Fact<?> fact) {
    return fact.outcome()
        .ifFound()
        .filter(AcuityReading.class::isInstance)
        .map(AcuityReading.class::cast);
  }
}
