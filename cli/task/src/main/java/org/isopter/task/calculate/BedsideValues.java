package org.isopter.task.calculate;

import java.math.BigDecimal;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.isopter.model.catalogue.AcuityReading;
import org.isopter.model.clinical.lens.Lens;
import org.isopter.model.value.AcuityText;
import org.isopter.model.value.Fault;
import org.isopter.model.value.Result;

/** Reads the values of calculations as they are written at the bedside. */
final class BedsideValues {

  private static final Pattern NUMBER = Pattern.compile("[+-]?\\d{1,4}(?:\\.\\d{1,4})?");

  /** Common practice, no source: a field reaches about 100 degrees to the temporal side. */
  private static final int WIDEST = 110;

  private static final Pattern COUNT = Pattern.compile("\\d{1,4}");
  private static final Pattern LENS =
      Pattern.compile(
          "([+-]\\d{1,2}(?:\\.\\d{1,2})?)(?: DS| ?/? ?([+-]\\d{1,2}(?:\\.\\d{1,2})?) ?[xX] ?(\\d{1,3}))?");

  private BedsideValues() {}

  /** Returns a plain number. */
  static Result<BigDecimal> number(String text) {
    return NUMBER.matcher(text).matches()
        ? Result.ok(new BigDecimal(text))
        : Result.refused(Fault.of("", text, "a number"));
  }

  /** Returns a whole number from zero on. */
  static Result<Integer> count(String text) {
    return COUNT.matcher(text).matches()
        ? Result.ok(Integer.parseInt(text))
        : Result.refused(Fault.of("", text, "a whole number"));
  }

  /** Returns whole degrees of an extent of the field, which has no more than 110 to any side. */
  static Result<Integer> degrees(String text) {
    return count(text)
        .flatMap(
            number ->
                number <= WIDEST
                    ? Result.ok(number)
                    : Result.refused(Fault.of("", text, "degrees from 0 to " + WIDEST)));
  }

  /** Returns a number above zero. */
  static Result<BigDecimal> positive(String text, String wanted) {
    return number(text)
        .flatMap(
            number ->
                number.signum() > 0
                    ? Result.ok(number)
                    : Result.refused(Fault.of("", text, wanted)));
  }

  /** Returns a lens; each power has its sign, so that none is assumed. */
  static Result<Lens> lens(String text) {
    Matcher lens = LENS.matcher(text.strip());
    if (!lens.matches()) {
      return Result.refused(Fault.of("", text, "a lens such as -2.00 -1.50 x30, or -2.00 DS"));
    }
    BigDecimal sphere = new BigDecimal(lens.group(1));
    return lens.group(2) == null
        ? Result.ok(Lens.sphere(sphere))
        : Lens.of(sphere, new BigDecimal(lens.group(2)), Integer.parseInt(lens.group(3)));
  }

  /** Returns an acuity of which nothing else is stated. */
  static Result<AcuityReading> acuity(String text) {
    return AcuityText.parse(text).map(AcuityReading::of);
  }
}
