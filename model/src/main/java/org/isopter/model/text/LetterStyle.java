package org.isopter.model.text;

import java.time.OffsetDateTime;
import java.time.format.DateTimeFormatter;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.function.UnaryOperator;
import org.isopter.model.answer.sight.RefractionMethod;
import org.isopter.model.answer.tissue.Tonometry;
import org.isopter.model.finding.Datum;
import org.isopter.model.finding.DatumTexts;
import org.isopter.model.finding.Finding;
import org.isopter.model.value.Absence;
import org.isopter.model.value.Concept;

/**
 * The words of a letter.
 *
 * @param performed the time of the examination, on the clock of its wall
 */
record LetterStyle(OffsetDateTime performed) implements FactStyle {

  private static final DateTimeFormatter DAY =
      DateTimeFormatter.ofPattern("d MMMM yyyy", Locale.ENGLISH);
  private static final DateTimeFormatter CLOCK = DateTimeFormatter.ofPattern("HH:mm", Locale.ROOT);

  /** How a part reads; a part that is not here is said with its name. */
  private static final Map<String, UnaryOperator<String>> PARTS =
      Map.ofEntries(
          Map.entry("defect-grade", grade -> grade.equals("trace") ? grade : "grade " + grade),
          Map.entry("log-units", LetterStyle::logUnits),
          Map.entry("plate-test", test -> test.endsWith("plates") ? test : test + " plates"),
          Map.entry("edition", count -> "edition of " + count + " plates"),
          Map.entry("frisen-grade", grade -> "Frisén grade " + grade),
          Map.entry("clock-hour", hour -> "at " + hour + " o'clock"),
          Map.entry("disc-sector", sector -> sector),
          Map.entry("disparity", least -> "down to " + least),
          Map.entry("doubling-eye", eye -> eye + (eye.equals("each") ? " eye" : " eye alone")),
          Map.entry("ptosis-amount", amount -> "by " + amount),
          Map.entry("separation", LetterStyle::apart),
          Map.entry("worst-gaze", gaze -> "worst " + looking(gaze)),
          Map.entry("fast-phase", gaze -> "fast phase " + toward(gaze)),
          Map.entry("seen-in-gaze", gaze -> "seen " + looking(gaze)),
          Map.entry("rim-distance", far -> "orbital rims " + far + " apart"),
          Map.entry("spot-size", size -> size + " in size"),
          Map.entry("screen-distance", far -> "on a screen at " + far));

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

  private static String toward(String gaze) {
    return switch (gaze) {
      case "up" -> "upward";
      case "down" -> "downward";
      case "right", "left" -> "to the " + gaze;
      default ->
          gaze.replaceFirst("^up ", "upward and to the ")
              .replaceFirst("^down ", "downward and to the ");
    };
  }

  @Override
  public Optional<String> whole(Object value) {
    return ValueText.of(value);
  }

  @Override
  public String datum(Datum datum) {
    if (datum instanceof Datum.Coded coded) {
      String word = PlainWords.concept(coded.concept());
      return word.equals("other") ? "of another kind" : word;
    }
    return datum instanceof Datum.Ratio ratio
        ? ratio.numerator().toPlainString() + " of " + ratio.denominator().toPlainString()
        : PlainWords.unit(DatumTexts.of(datum));
  }

  @Override
  public String absent(Absence reason) {
    return PlainWords.absence(reason);
  }

  @Override
  public String part(String key, String words) {
    return PARTS.getOrDefault(key, text -> PlainWords.words(key) + " " + text).apply(words);
  }

  /** A technique that the title of the finding names already is not named again. */
  @Override
  public String technique(Finding<?> finding, Concept technique) {
    String words = technique(technique);
    return PlainWords.lower(finding.title()).contains(words) ? "" : words;
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

  @Override
  public String device(String name) {
    return "with " + PlainWords.lower(name);
  }

  /** A time goes without its date on the day of the examination. */
  @Override
  public String time(OffsetDateTime time) {
    OffsetDateTime there = time.withOffsetSameInstant(performed.getOffset());
    boolean sameDay = there.toLocalDate().equals(performed.toLocalDate());
    return "at " + CLOCK.format(there) + (sameDay ? "" : " on " + DAY.format(there));
  }
}
