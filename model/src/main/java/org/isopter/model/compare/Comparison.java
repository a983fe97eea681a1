package org.isopter.model.compare;

import java.math.BigDecimal;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import org.isopter.model.answer.sight.Chart;
import org.isopter.model.catalogue.Acuities;
import org.isopter.model.catalogue.AcuityReading;
import org.isopter.model.catalogue.Refractions;
import org.isopter.model.clinical.acuity.AcuityChange;
import org.isopter.model.clinical.acuity.PartialLine;
import org.isopter.model.clinical.acuity.RetestLimit;
import org.isopter.model.clinical.lens.Lens;
import org.isopter.model.clinical.statement.Statement;
import org.isopter.model.exam.Exam;
import org.isopter.model.exam.Fact;
import org.isopter.model.exam.Party;
import org.isopter.model.finding.Datum;
import org.isopter.model.finding.EncodedValue;
import org.isopter.model.text.FactText;
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

  public Comparison {
    Objects.requireNonNull(earlier, "earlier");
    Objects.requireNonNull(later, "later");
    changes = List.copyOf(Objects.requireNonNull(changes, "changes"));
  }

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
    return Matching.of(earlier, later).stream().map(pair -> change(pair, earlier, later)).toList();
  }

  private static Change change(Matching.Pair pair, Exam earlier, Exam later) {
    Fact<?> any = pair.now().or(pair::before).orElseThrow();
    Change.Kind kind = kind(pair, earlier, later);
    boolean comparable = kind == Change.Kind.SAME || kind == Change.Kind.DIFFERENT;
    Optional<Fact<?>> now = pair.now().filter(fact -> comparable);
    return new Change(
        any.finding(),
        any.site(),
        kind,
        pair.before().map(fact -> words(fact, earlier)).orElse(""),
        pair.now().map(fact -> words(fact, later)).orElse(""),
        now.flatMap(fact -> difference(pair.before().orElseThrow(), fact)),
        now.flatMap(fact -> verdict(pair.before().orElseThrow(), fact))
            .or(
                () ->
                    kind == Change.Kind.ONLY_NOW
                        ? BoundChange.of(any, earlier, later)
                        : Optional.empty()));
  }

  private static String words(Fact<?> fact, Exam exam) {
    return FactText.of(fact, exam.header().performed());
  }

  private static Change.Kind kind(Matching.Pair pair, Exam earlier, Exam later) {
    if (pair.before().isEmpty()) {
      return Change.Kind.ONLY_NOW;
    }
    if (pair.now().isEmpty()) {
      return Change.Kind.ONLY_BEFORE;
    }
    Fact<?> before = pair.before().get();
    Fact<?> now = pair.now().get();
    if (Comparability.isUnderDrops(before, earlier) || Comparability.isUnderDrops(now, later)) {
      return Change.Kind.UNDER_DROPS;
    }
    if (!pair.sameTechnique() || !Comparability.isAlike(before, now)) {
      return Change.Kind.OTHER_TECHNIQUE;
    }
    return isSame(before, now) ? Change.Kind.SAME : Change.Kind.DIFFERENT;
  }

  /** A lens that is written with the other sign of cylinder is the same lens. */
  private static boolean isSame(Fact<?> before, Fact<?> now) {
    return before.outcome().equals(now.outcome())
        || refraction(before)
            .flatMap(one -> refraction(now).map(two -> isSameLens(one, two)))
            .orElse(false);
  }

  private static Optional<Refractions.Refraction> refraction(Fact<?> fact) {
    return fact.outcome()
        .ifFound()
        .filter(Refractions.Refraction.class::isInstance)
        .map(Refractions.Refraction.class::cast);
  }

  private static boolean isSameLens(Refractions.Refraction one, Refractions.Refraction two) {
    return one.addition().equals(two.addition())
        && one.horizontal().equals(two.horizontal())
        && one.vertical().equals(two.vertical())
        && one.vertex().equals(two.vertex())
        && Lens.of(one).orThrow().isSameAs(Lens.of(two).orThrow());
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

  /** Returns the limit that applies to two readings. */
  public static RetestLimit limit(AcuityReading one, AcuityReading two) {
    Objects.requireNonNull(one, "one");
    Objects.requireNonNull(two, "two");
    return isScoredByLetters(one) && isScoredByLetters(two)
        ? RetestLimit.LETTERS_OF_PATIENTS
        : RetestLimit.LINES;
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
