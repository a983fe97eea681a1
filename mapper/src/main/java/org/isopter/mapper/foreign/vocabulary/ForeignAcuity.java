package org.isopter.mapper.foreign.vocabulary;

import java.util.Locale;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.isopter.model.value.Acuity;
import org.isopter.model.value.AcuityText;
import org.isopter.model.value.Result;

/** Turns the ways in which others write an acuity into the way in which the record writes it. */
public final class ForeignAcuity {

  private static final Pattern AT_DISTANCE =
      Pattern.compile(
          "(.+?)\\s*(?:@|(?<=\\s)(?:at|in|à|a|auf|bei|op)(?=\\s))?\\s*(\\d+(?:\\.\\d+)?)\\s*"
              + "(m|cm|ft|metres?|meters?|feet|foot|'|′)\\.?",
          Pattern.CASE_INSENSITIVE);

  /** No number of an acuity has thousands, so that a comma before one or two digits is decimal. */
  private static final Pattern COMMA =
      Pattern.compile("(?<![\\d.,])(\\d{1,2}),(\\d{1,2})(?![\\d.,])");

  /** The letters beyond or short of a line stand in brackets behind it. */
  private static final Pattern BRACKETED =
      Pattern.compile("(/\\s*[\\d.]+)\\s*\\(\\s*([+-]\\d)\\s*\\)$");

  private static final Pattern PRINT =
      Pattern.compile("(N|J|jaeger)\\.?\\s*(\\d+\\+?)", Pattern.CASE_INSENSITIVE);

  /** In capitals, as the sizes of print are called: "8 n" may be anything. */
  private static final Pattern PRINT_BEHIND = Pattern.compile("(\\d+)\\s*(N|J)");

  private static final Pattern NOTATION_FIRST =
      Pattern.compile(
          "(logmar|decimal)\\s*[:=]?\\s*([+-]?\\d+(?:\\.\\d+)?)", Pattern.CASE_INSENSITIVE);

  private ForeignAcuity() {}

  /** Returns the acuity that a text writes, in the form that the record writes; empty for none. */
  public static Optional<String> written(String text, Habits habits) {
    String plain = text.strip();
    if (readable(plain)) {
      return Optional.of(plain);
    }
    String typed = typed(plain);
    return readable(typed) ? Optional.of(typed) : inWords(typed, habits);
  }

  private static Optional<String> inWords(String plain, Habits habits) {
    return low(plain, habits)
        .or(() -> notationFirst(plain))
        .or(() -> print(plain))
        .filter(ForeignAcuity::readable);
  }

  /** Returns the text as a plain keyboard writes it: other slashes, wide signs, a decimal comma. */
  private static String typed(String text) {
    StringBuilder narrow = new StringBuilder();
    for (int i = 0; i < text.length(); i++) {
      char sign = text.charAt(i);
      boolean wide = sign >= '\uff01' && sign <= '\uff5e';
      narrow.append(wide ? (char) (sign - 0xfee0) : sign);
    }
    String plain =
        narrow.toString().replace('\u2044', '/').replace('\u2215', '/').replace('\u00a0', ' ');
    String point = COMMA.matcher(plain).replaceAll("$1.$2");
    return BRACKETED.matcher(point).replaceAll("$1$2");
  }

  /** Says whether two written forms may be of one acuity, the second with more detail. */
  public static boolean agree(String coded, String text) {
    Result<Acuity> one = AcuityText.parse(coded);
    Result<Acuity> other = AcuityText.parse(text);
    if (one instanceof Result.Ok<Acuity> a && other instanceof Result.Ok<Acuity> b) {
      return a.value().equals(b.value()) || isLowWithout(a.value(), b.value());
    }
    return false;
  }

  /** A code of counting fingers names no distance; the text beside it may. */
  private static boolean isLowWithout(Acuity coded, Acuity text) {
    return coded instanceof Acuity.Low low
        && text instanceof Acuity.Low more
        && low.category() == more.category()
        && low.distance().isEmpty();
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
        .or(() -> Optional.of(words.strip()).filter(ForeignAcuity::readable));
  }

  private static String unit(String text) {
    String plain = text.toLowerCase(Locale.ROOT);
    boolean feet = plain.startsWith("f") || plain.equals("'") || plain.equals("′");
    return feet ? "ft" : plain.startsWith("c") ? "cm" : "m";
  }

  private static Optional<String> print(String text) {
    Matcher size = PRINT.matcher(text);
    Matcher behind = PRINT_BEHIND.matcher(text);
    if (!size.matches()) {
      return behind.matches() ? Optional.of(behind.group(2) + behind.group(1)) : Optional.empty();
    }
    String letter = size.group(1).substring(0, 1).toUpperCase(Locale.ROOT);
    return Optional.of(letter + size.group(2));
  }

  private static Optional<String> notationFirst(String text) {
    Matcher parts = NOTATION_FIRST.matcher(text);
    return parts.matches()
        ? Optional.of(parts.group(2) + " " + parts.group(1).toLowerCase(Locale.ROOT))
        : Optional.empty();
  }
}
