package org.isopter.mapper.privacy;

import java.math.BigDecimal;
import java.math.RoundingMode;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeMap;
import java.util.stream.Collectors;
import org.isopter.mapper.table.PooledExam;
import org.isopter.model.catalogue.Catalogue;
import org.isopter.model.derive.Derived;
import org.isopter.model.exam.Exam;
import org.isopter.model.exam.Fact;
import org.isopter.model.exam.FactKey;
import org.isopter.model.finding.Datum;
import org.isopter.model.finding.EncodedValue;
import org.isopter.model.finding.Finding;
import org.isopter.model.finding.Part;
import org.isopter.model.finding.Spec;
import org.isopter.model.finding.Variant;
import org.isopter.model.value.Absence;
import org.isopter.model.value.Fault;
import org.isopter.model.value.FaultException;
import org.isopter.model.value.Outcome;
import org.isopter.model.value.Result;

/**
 * Rounds measured numbers to multiples of a step, in the facts themselves, so that no table holds
 * the exact ones.
 *
 * <p>A step counts in the usual unit of the number; a number in another unit, or one whose rounded
 * form is refused by the finding, is masked. What is concluded from a number that was rounded is
 * left out: it would tell the exact one, or be wrong of the rounded one.
 *
 * @param steps the step of each part; a value is called by its finding alone, a part by finding and
 *     part with a point between
 */
public record Rounding(Map<String, BigDecimal> steps) {

  /** Rounds nothing. */
  public static final Rounding NONE = new Rounding(Map.of());

  public Rounding {
    steps = Map.copyOf(steps);
  }

  /**
   * Returns the rounding of steps such as {@code intraocular-pressure=2} and {@code
   * refraction.sphere=0.5}.
   *
   * @throws FaultException when one names no number of the catalogue, or its step is none
   */
  public static Rounding parse(Catalogue catalogue, List<String> texts) {
    Map<String, BigDecimal> steps = new LinkedHashMap<>();
    List<String> known = names(catalogue);
    for (String text : texts) {
      int at = text.indexOf('=');
      String name = at < 0 ? text : text.substring(0, at);
      if (!known.contains(name)) {
        String wanted = "a number, such as intraocular-pressure=2 or refraction.sphere=0.5";
        throw new FaultException(Fault.of("round", "\"" + text + "\"", wanted));
      }
      steps.put(name, step(text, text.substring(at + 1)));
    }
    return new Rounding(steps);
  }

  private static BigDecimal step(String whole, String digits) {
    return number(digits)
        .filter(one -> one.signum() > 0 && one.precision() < 10 && Math.abs(one.scale()) < 10)
        .orElseThrow(
            () ->
                new FaultException(
                    Fault.of("round", "\"" + whole + "\"", "a step of more than 0, such as 0.5")));
  }

  private static Optional<BigDecimal> number(String digits) {
    try {
      return Optional.of(new BigDecimal(digits));
    } catch (NumberFormatException none) {
      return Optional.empty();
    }
  }

  /** Acuities stand in lines of a chart: they are no numbers to be rounded. */
  private static List<String> names(Catalogue catalogue) {
    List<String> names = new ArrayList<>();
    for (Finding<?> finding : catalogue.all()) {
      boolean choice = finding.layout().choice().isPresent();
      for (Variant variant : choice ? List.<Variant>of() : finding.layout().variants()) {
        if (variant.value().filter(Rounding::isMeasure).isPresent()) {
          names.add(finding.id());
        }
        variant.parts().stream()
            .filter(part -> isMeasure(part.spec()))
            .forEach(part -> names.add(finding.id() + "." + part.key()));
      }
    }
    return names;
  }

  private static boolean isMeasure(Spec spec) {
    return spec instanceof Spec.Measure;
  }

  /** Says whether every number stays as it is. */
  public boolean isNone() {
    return steps.isEmpty();
  }

  /** Returns the examination with its numbers rounded. */
  public PooledExam apply(PooledExam pooled) {
    if (steps.isEmpty()) {
      return pooled;
    }
    Exam exam = pooled.exam();
    List<Fact<?>> facts = exam.facts().stream().<Fact<?>>map(this::fact).toList();
    return pooled.with(new Exam(exam.header(), facts), pooled.person());
  }

  /** Returns the statements that rest on no number that is rounded. */
  public List<Derived> left(List<Derived> derived, Exam exam) {
    if (steps.isEmpty()) {
      return derived;
    }
    Set<FactKey> rounded = new HashSet<>();
    List<FactKey> keys = exam.keys();
    for (int i = 0; i < keys.size(); i++) {
      if (concerns(exam.facts().get(i).finding())) {
        rounded.add(keys.get(i));
      }
    }
    return derived.stream()
        .filter(one -> one.from().stream().noneMatch(rounded::contains))
        .toList();
  }

  private boolean concerns(Finding<?> finding) {
    return steps.keySet().stream()
        .anyMatch(name -> name.equals(finding.id()) || name.startsWith(finding.id() + "."));
  }

  private <V> Fact<V> fact(Fact<V> fact) {
    Optional<EncodedValue> value = fact.panel().filter(any -> concerns(fact.finding()));
    return value
        .map(
            exact ->
                rounded(fact.finding(), exact)
                    .flatMap(panel -> decoded(fact, panel))
                    .orElseGet(() -> Fact.absent(fact.finding(), fact.site(), Absence.MASKED)))
        .map(other -> other.with(fact.method(), fact.at(), fact.device()).remarks(fact.remarks()))
        .orElse(fact);
  }

  private static <V> Optional<Fact<V>> decoded(Fact<V> exact, EncodedValue panel) {
    return Fact.decode(exact.finding(), exact.site(), panel) instanceof Result.Ok<Fact<V>> good
        ? Optional.of(good.value())
        : Optional.empty();
  }

  /** Returns the rounded value; empty where a number cannot be rounded. */
  private Optional<EncodedValue> rounded(Finding<?> finding, EncodedValue exact) {
    Variant variant = finding.layout().variant(exact.notation()).orElseThrow();
    Map<String, Outcome<Datum>> parts = new LinkedHashMap<>(exact.parts());
    boolean whole = true;
    for (Part<?, ?> part : variant.parts()) {
      Optional<BigDecimal> step = step(finding.id() + "." + part.key());
      Optional<Datum> datum = exact.found(part.key());
      if (step.isPresent() && datum.isPresent()) {
        Optional<Datum> other = multiple(part.spec(), datum.get(), step.get());
        whole &= other.isPresent();
        other.ifPresent(found -> parts.put(part.key(), Outcome.found(found)));
      }
    }
    Optional<Datum> value = exact.value();
    Optional<BigDecimal> step = step(finding.id());
    if (step.isPresent() && value.isPresent()) {
      value = multiple(variant.value().orElseThrow(), value.get(), step.get());
      whole &= value.isPresent();
    }
    return whole ? Optional.of(new EncodedValue(exact.notation(), value, parts)) : Optional.empty();
  }

  private Optional<BigDecimal> step(String name) {
    return Optional.ofNullable(steps.get(name));
  }

  /** Returns the nearest multiple of a step that a part may have. */
  private static Optional<Datum> multiple(Spec spec, Datum datum, BigDecimal step) {
    if (!(spec instanceof Spec.Measure wanted && datum instanceof Datum.Measure number)) {
      return Optional.empty();
    }
    BigDecimal times = number.value().divide(step, 0, RoundingMode.HALF_EVEN);
    BigDecimal near = times.multiply(step).stripTrailingZeros();
    return wanted.spans().get(0).unit().equals(number.unit())
        ? Optional.of(new Datum.Measure(near, number.unit()))
        : Optional.empty();
  }

  /** Returns what is rounded and how, as one text; empty where nothing is. */
  @Override
  public String toString() {
    return new TreeMap<>(steps)
        .entrySet().stream()
            .map(step -> step.getKey() + "=" + step.getValue().toPlainString())
            .collect(Collectors.joining(", "));
  }
}
