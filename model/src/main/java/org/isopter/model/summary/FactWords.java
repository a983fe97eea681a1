package org.isopter.model.summary;

import java.time.format.DateTimeFormatter;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.function.UnaryOperator;
import org.isopter.model.answer.sight.RefractionMethod;
import org.isopter.model.answer.tissue.Tonometry;
import org.isopter.model.exam.Fact;
import org.isopter.model.finding.Datum;
import org.isopter.model.finding.DatumTexts;
import org.isopter.model.finding.EncodedValue;
import org.isopter.model.value.Concept;
import org.isopter.model.value.Outcome;

/** What a fact says, in plain words. */
public final class FactWords {

  private static final DateTimeFormatter CLOCK = DateTimeFormatter.ofPattern("HH:mm", Locale.ROOT);

  /** How a part reads; a part that is not here is told with its name. */
  private static final Map<String, UnaryOperator<String>> PARTS =
      Map.ofEntries(
          Map.entry("lighting", light -> "in " + light + " light"),
          Map.entry("defect-grade", grade -> "grade " + grade),
          Map.entry("log-units", units -> units),
          Map.entry("plate-test", test -> test.endsWith("plates") ? test : test + " plates"),
          Map.entry("edition", count -> "edition of " + count + " plates"),
          Map.entry("frisen-grade", grade -> "Frisén grade " + grade),
          Map.entry("clock-hour", hour -> "at " + hour + " o'clock"),
          Map.entry("ptosis-amount", amount -> "by " + amount),
          Map.entry("separation", how -> "one image from the other: " + how),
          Map.entry("worst-gaze", gaze -> "worst looking " + gaze.replace(" ", " and ")),
          Map.entry("fast-phase", gaze -> "fast phase to the " + gaze),
          Map.entry("seen-in-gaze", gaze -> "seen looking " + gaze.replace(" ", " and ")),
          Map.entry("spot-size", size -> size + " in size"),
          Map.entry("screen-distance", far -> "on a screen at " + far));

  private FactWords() {}

  /** Returns the value, its conditions and its remarks; or why there is none. */
  public static String of(Fact<?> fact) {
    StringBuilder words = new StringBuilder(outcome(fact));
    fact.method()
        .map(FactWords::technique)
        .filter(how -> !Say.lower(fact.finding().title()).contains(how))
        .ifPresent(how -> words.append(", ").append(how));
    fact.device().ifPresent(with -> words.append(", with ").append(Say.lower(with)));
    fact.at().ifPresent(when -> words.append(", at ").append(CLOCK.format(when)));
    if (!fact.remarks().isEmpty()) {
      words.append(" (").append(String.join(" ", fact.remarks())).append(")");
    }
    return words.toString();
  }

  /** A technique whose word is half of its name gets the other half. */
  private static String technique(Concept method) {
    String word = Say.concept(method);
    if (method instanceof Tonometry kind && kind != Tonometry.PALPATION) {
      return word + " tonometry";
    }
    boolean bare = method == RefractionMethod.SUBJECTIVE || method == RefractionMethod.OBJECTIVE;
    return bare ? word + " refraction" : word;
  }

  /** Returns the value alone; or why there is none. */
  public static String outcome(Fact<?> fact) {
    return fact.outcome().fold(value -> found(fact, value), Say::absence);
  }

  private static String found(Fact<?> fact, Object value) {
    return ValueWords.of(value).orElseGet(() -> parts(fact.panel().orElseThrow()));
  }

  private static String parts(EncodedValue panel) {
    List<String> words = new ArrayList<>();
    panel.value().map(FactWords::datum).ifPresent(words::add);
    panel.parts().forEach((key, outcome) -> words.add(part(key, outcome)));
    return String.join(", ", words);
  }

  private static String part(String key, Outcome<Datum> outcome) {
    String value = outcome.fold(FactWords::datum, Say::absence);
    return PARTS.getOrDefault(key, text -> Say.words(key) + " " + text).apply(value);
  }

  private static String datum(Datum datum) {
    if (datum instanceof Datum.Coded coded) {
      return Say.concept(coded.concept());
    }
    return datum instanceof Datum.Ratio ratio
        ? ratio.numerator().toPlainString() + " of " + ratio.denominator().toPlainString()
        : Say.unit(DatumTexts.of(datum));
  }
}
