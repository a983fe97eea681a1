package org.isopter.mapper.cda;

import java.math.BigDecimal;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.regex.MatchResult;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * The number of a coded value, against the numbers that words for people say beside it: where the
 * words have numbers and not this one, one of the two is wrong, and nobody knows which.
 *
 * @param number its digits: {@code 14}, {@code -1.25} or {@code 20/80}
 * @param unit its unit without brackets and blanks, in small letters; may be empty
 */
record CdaNumbers(String number, String unit) {

  private static final String DIGITS = "[+-]?\\d+(?:[.,]\\d+)?";
  private static final Pattern VALUE = Pattern.compile("(" + DIGITS + "(?:/" + DIGITS + ")?).*");

  /** Dates and times of day are no values. */
  private static final Pattern TIME =
      Pattern.compile(
          "\\d{4}-\\d{2}-\\d{2}|\\d{1,2}[./]\\d{1,2}[./]\\d{4}|\\d{1,2}:\\d{2}(:\\d{2})?");

  private static final Pattern NUMBER =
      Pattern.compile(
          "(?<![\\p{L}\\d.,/])([<>\\u2264\\u2265~\\u00b1]\\s*)?"
              + "("
              + DIGITS
              + "(?:/"
              + DIGITS
              + ")?)");

  /** A dash behind a blank and before a digit is the sign of another number. */
  private static final Pattern RANGE =
      Pattern.compile("(?:[-\\u2013]|\\s+(?:[-\\u2013]|to)\\s+)\\d.*");

  /** Returns the number of a value, empty where it says none. */
  static Optional<CdaNumbers> of(CdaNode value) {
    String said = value.attribute("value").orElseGet(value::text);
    String unit = value.attribute("unit").orElse("");
    return Optional.of(VALUE.matcher(plain(said)))
        .filter(Matcher::matches)
        .map(found -> new CdaNumbers(found.group(1), letters(unit)));
  }

  /** Says whether words have a number at all. */
  static boolean isIn(String words) {
    return NUMBER.matcher(withoutTimes(words)).find();
  }

  /** Says whether words about this value alone say another number, a bound or a range. */
  boolean isContradictedBy(String words) {
    String text = withoutTimes(words);
    List<MatchResult> found = found(text);
    return found.stream().anyMatch(one -> isOther(one, text))
        || (!found.isEmpty() && found.stream().noneMatch(this::isSame));
  }

  /** Says whether words about many values have numbers, and this one is none of them. */
  boolean isMissingIn(String words) {
    return !found(withoutTimes(words)).isEmpty() && !isFoundIn(words);
  }

  /** Says whether words have this number, and not as a bound. */
  boolean isFoundIn(String words) {
    String text = withoutTimes(words);
    return found(text).stream().anyMatch(one -> isSame(one) && !isBoundOrRange(one, text));
  }

  private List<MatchResult> found(String text) {
    return NUMBER
        .matcher(text)
        .results()
        .filter(one -> (one.group(2).indexOf('/') > 0) == (number.indexOf('/') > 0))
        .toList();
  }

  /** A number with the same unit, each fraction beside a fraction, and each range, is another. */
  private boolean isOther(MatchResult one, String text) {
    boolean alike =
        number.indexOf('/') > 0
            || (!unit.isEmpty() && letters(text.substring(one.end())).startsWith(unit));
    return isRange(one, text) || (isSame(one) ? one.group(1) != null : alike);
  }

  private boolean isSame(MatchResult one) {
    String other = one.group(2);
    return number.indexOf('/') > 0
        ? other.equals(number)
        : decimal(other).compareTo(decimal(number)) == 0;
  }

  private static boolean isBoundOrRange(MatchResult one, String text) {
    return one.group(1) != null || isRange(one, text);
  }

  private static boolean isRange(MatchResult one, String text) {
    return RANGE.matcher(text.substring(one.end())).matches();
  }

  private static BigDecimal decimal(String number) {
    return new BigDecimal(number.replace(',', '.').replaceFirst("^\\+", ""));
  }

  private static String withoutTimes(String words) {
    return TIME.matcher(plain(words)).replaceAll(" ");
  }

  private static String plain(String words) {
    return words.replace('\u2212', '-');
  }

  private static String letters(String text) {
    return text.replaceAll("[\\s\\[\\]']", "").toLowerCase(Locale.ROOT);
  }
}
