package org.isopter.mapper.foreign;

import java.util.Locale;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.isopter.model.value.Acuity;
import org.isopter.model.value.AcuityText;
import org.isopter.model.value.Result;

/** Turns the ways in which others write an acuity into the way in which the record writes it. */
final class AcuityWords {

  private static final Pattern AT_DISTANCE =
      Pattern.compile(
          "(.+?)\\s*(?:@|\\bat\\b)?\\s*(\\d+(?:\\.\\d+)?)\\s*(m|cm|ft|metres?|meters?|feet|foot)\\.?",
          Pattern.CASE_INSENSITIVE);

  private static final Pattern NOTATION_FIRST =
      Pattern.compile(
          "(logmar|decimal)\\s*[:=]?\\s*([+-]?\\d+(?:\\.\\d+)?)", Pattern.CASE_INSENSITIVE);

  private AcuityWords() {}

  /** Returns the acuity that a text writes, in the form that the record writes; empty for none. */
  static Optional<String> written(String text, Habits habits) {
    String plain = text.strip();
    if (readable(plain)) {
      return Optional.of(plain);
    }
    return low(plain, habits).or(() -> notationFirst(plain)).filter(AcuityWords::readable);
  }

  /** Says whether two written forms may be of one acuity, the second with more detail. */
  static boolean agree(String coded, String text) {
    Result<Acuity> one = AcuityText.parse(coded);
    Result<Acuity> other = AcuityText.parse(text);
    if (one instanceof Result.Ok<Acuity> a && other instanceof Result.Ok<Acuity> b) {
      return a.value().equals(b.value())
          || a.value() instanceof Acuity.Low low
              && b.value() instanceof Acuity.Low more
              && low.category() == more.category()
              && low.distance().isEmpty();
    }
    return false;
  }

  private static boolean readable(String text) {
    return AcuityText.parse(text).isOk();
  }

  private static Optional<String> low(String text, Habits habits) {
    Optional<String> whole = category(text, habits);
    if (whole.isPresent()) {
      return whole;
    }
    Matcher parts = AT_DISTANCE.matcher(text);
    return parts.matches()
        ? category(parts.group(1), habits)
            .map(c -> c + " " + parts.group(2) + " " + unit(parts.group(3)))
        : Optional.empty();
  }

  private static Optional<String> category(String words, Habits habits) {
    return habits
        .lowVision(words)
        .or(() -> Optional.of(words.strip()).filter(AcuityWords::readable));
  }

  private static String unit(String text) {
    String plain = text.toLowerCase(Locale.ROOT);
    return plain.startsWith("f") ? "ft" : plain.startsWith("c") ? "cm" : "m";
  }

  private static Optional<String> notationFirst(String text) {
    Matcher parts = NOTATION_FIRST.matcher(text);
    return parts.matches()
        ? Optional.of(parts.group(2) + " " + parts.group(1).toLowerCase(Locale.ROOT))
        : Optional.empty();
  }
}
