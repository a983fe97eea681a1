package org.isopter.model.text;

import java.time.OffsetDateTime;
import java.time.format.DateTimeFormatter;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.function.UnaryOperator;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.isopter.model.answer.sight.RefractionMethod;
import org.isopter.model.answer.tissue.Tonometry;
import org.isopter.model.exam.Fact;
import org.isopter.model.finding.Datum;
import org.isopter.model.finding.DatumTexts;
import org.isopter.model.finding.EncodedValue;
import org.isopter.model.value.Concept;
import org.isopter.model.value.Outcome;

/** What a fact says, in plain words. */
public final class FactText {

  private static final DateTimeFormatter DAY =
      DateTimeFormatter.ofPattern("d MMMM yyyy", Locale.ENGLISH);
  private static final DateTimeFormatter CLOCK = DateTimeFormatter.ofPattern("HH:mm", Locale.ROOT);

  /** How a part reads; a part that is not here is told with its name. */
  private static final Map<String, UnaryOperator<String>> PARTS =
      Map.ofEntries(
          Map.entry("lighting", light -> "in " + light + " light"),
          Map.entry("defect-grade", grade -> grade.equals("trace") ? grade : "grade " + grade),
          Map.entry("log-units", FactText::logUnits),
          Map.entry("plate-test", test -> test.endsWith("plates") ? test : test + " plates"),
          Map.entry("edition", count -> "edition of " + count + " plates"),
          Map.entry("frisen-grade", grade -> "Frisén grade " + grade),
          Map.entry("clock-hour", hour -> "at " + hour + " o'clock"),
          Map.entry("ptosis-amount", amount -> "by " + amount),
          Map.entry("separation", FactText::apart),
          Map.entry("worst-gaze", gaze -> "worst " + looking(gaze)),
          Map.entry("fast-phase", gaze -> "fast phase " + toward(gaze)),
          Map.entry("seen-in-gaze", gaze -> "seen " + looking(gaze)),
          Map.entry("rim-distance", far -> "orbital rims " + far + " apart"),
          Map.entry("spot-size", size -> size + " in size"),
          Map.entry("screen-distance", far -> "on a screen at " + far));

  private FactText() {}

  private static String logUnits(String units) {
    return units.equals("1 log units") ? "1 log unit" : units;
  }

  private static String apart(String direction) {
    return switch (direction) {
      case "horizontal" -> "the images side by side";
      case "vertical" -> "the images one above the other";
      case "oblique" -> "the images obliquely apart";
      default -> "the images tilted against each other";
    };
  }

  private static String looking(String gaze) {
    return gaze.equals("primary")
        ? "looking straight ahead"
        : "looking " + gaze.replace(" ", " and ");
  }

  /** A beat goes upward or to the right; straight ahead it goes nowhere. */
  private static String toward(String gaze) {
    return switch (gaze) {
      case "up" -> "upward";
      case "down" -> "downward";
      case "primary" -> "straight ahead";
      case "right", "left" -> "to the " + gaze;
      default ->
          gaze.replaceFirst("^up ", "upward and to the ")
              .replaceFirst("^down ", "downward and to the ");
    };
  }

  /**
   * Returns the value, its conditions and its remarks, or why there is none. A time of its own is
   * that of the clock on the wall of the examination, without a date on the day of the examination.
   *
   * @param performed the time of the examination
   */
  public static String of(Fact<?> fact, OffsetDateTime performed) {
    String context = context(fact, performed);
    return outcome(fact) + (context.isEmpty() ? "" : ", " + context) + remarks(fact);
  }

  private static String within(OffsetDateTime time, OffsetDateTime performed) {
    OffsetDateTime there = time.withOffsetSameInstant(performed.getOffset());
    boolean sameDay = there.toLocalDate().equals(performed.toLocalDate());
    return "at " + CLOCK.format(there) + (sameDay ? "" : " on " + DAY.format(there));
  }

  /**
   * Returns technique, instrument and a time of its own, within an examination; nothing where none
   * of them is stated.
   */
  public static String context(Fact<?> fact, OffsetDateTime performed) {
    return Stream.of(how(fact), fact.at().map(time -> within(time, performed)).orElse(""))
        .filter(words -> !words.isEmpty())
        .collect(Collectors.joining(", "));
  }

  /** Returns the remarks in brackets, with a space before them; nothing where there are none. */
  public static String remarks(Fact<?> fact) {
    return fact.remarks().isEmpty() ? "" : " (" + String.join(" ", fact.remarks()) + ")";
  }

  private static String how(Fact<?> fact) {
    Optional<String> technique =
        fact.method()
            .map(FactText::technique)
            .filter(how -> !PlainWords.lower(fact.finding().title()).contains(how));
    Optional<String> instrument = fact.device().map(with -> "with " + PlainWords.lower(with));
    return Stream.of(technique, instrument)
        .flatMap(Optional::stream)
        .collect(Collectors.joining(", "));
  }

  /** A technique whose word is half of its name gets the other half. */
  private static String technique(Concept method) {
    String word = PlainWords.concept(method);
    if (word.equals("other")) {
      return "another technique";
    }
    if (method instanceof Tonometry kind && kind != Tonometry.PALPATION) {
      return word + " tonometry";
    }
    boolean bare = method == RefractionMethod.SUBJECTIVE || method == RefractionMethod.OBJECTIVE;
    return bare ? word + " refraction" : word;
  }

  /** Returns the value alone; or why there is none. */
  public static String outcome(Fact<?> fact) {
    return fact.outcome().fold(value -> found(fact, value), PlainWords::absence);
  }

  private static String found(Fact<?> fact, Object value) {
    return ValueText.of(value).orElseGet(() -> parts(fact.panel().orElseThrow()));
  }

  private static String parts(EncodedValue panel) {
    List<String> words = new ArrayList<>();
    panel.value().map(FactText::datum).ifPresent(words::add);
    panel.parts().forEach((key, outcome) -> words.add(part(key, outcome)));
    return String.join(", ", words);
  }

  private static String part(String key, Outcome<Datum> outcome) {
    String value = outcome.fold(FactText::datum, PlainWords::absence);
    return PARTS.getOrDefault(key, text -> PlainWords.words(key) + " " + text).apply(value);
  }

  private static String datum(Datum datum) {
    if (datum instanceof Datum.Coded coded) {
      String word = PlainWords.concept(coded.concept());
      return word.equals("other") ? "of another kind" : word;
    }
    return datum instanceof Datum.Ratio ratio
        ? ratio.numerator().toPlainString() + " of " + ratio.denominator().toPlainString()
        : PlainWords.unit(DatumTexts.of(datum));
  }
}
