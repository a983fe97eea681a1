package org.isopter.model.value;

import java.math.BigDecimal;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.function.Function;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * Reads and writes acuities as the trade writes them: {@code 6/9-2}, {@code 20/40+1}, {@code 0.3
 * logMAR}, {@code 78 letters}, {@code CF 1 m}, {@code HM}, {@code LP}, {@code NLP}, {@code N6},
 * {@code J3}, {@code 0.8 M}, {@code NI}.
 *
 * <p>A bare number is refused: 0.5 may be a decimal or a logMAR. A fraction that mixes metres and
 * feet is refused unless its unit or the testing distance explains it.
 */
public final class AcuityText {

  private static final String NUMBER = "\\d+(?:\\.\\d+)?";

  /** What an acuity may look like, as a regular expression; upper and lower case differ. */
  public static final String PATTERN =
      "^(?:\\d+(?:\\.\\d+)?/\\d+(?:\\.\\d+)?(?:[+-]\\d)?(?: ?(?:m|ft))?"
          + "|\\d+(?:\\.\\d+)? decimal|-?\\d+(?:\\.\\d+)? logMAR|\\d+ letters"
          + "|(?:CF|HM|LP|LP accurate|LP inaccurate|NLP)(?: \\d+(?:\\.\\d+)? (?:m|cm|ft))?"
          + "|N\\d+(?:\\.\\d+)?|J1\\+|J\\d+|\\d+(?:\\.\\d+)? M|NI)$";

  private static final String NOTATIONS =
      "an acuity with its notation: 6/9, 20/40, 0.3 logMAR, 0.5 decimal, 78 letters, CF 1 m, HM,"
          + " LP, NLP, N6, J3, 0.8 M";

  private static final List<Form> FORMS =
      List.of(
          new Form("(" + NUMBER + ") ?decimal", m -> new Acuity.DecimalFraction(number(m))),
          new Form("([+-]?" + NUMBER + ") ?logmar", m -> new Acuity.LogMar(number(m))),
          new Form("(\\d{1,3}) letters", m -> new Acuity.Letters(Integer.parseInt(m.group(1)))),
          new Form("n ?(" + NUMBER + ")", m -> new Acuity.Points(number(m))),
          new Form("(" + NUMBER + ") ?m", m -> new Acuity.MUnits(number(m))),
          new Form("ni", m -> new Acuity.NotImproved()));

  private static final Pattern FRACTION =
      Pattern.compile("(" + NUMBER + ") ?/ ?(" + NUMBER + ") ?([+-]\\d)? ?(m|ft)?");

  private static final Pattern LOW =
      Pattern.compile("(cf|hm|lp|lp accurate|lp inaccurate|nlp)(?: ?(" + NUMBER + ") ?(m|cm|ft))?");

  private AcuityText() {}

  /** Reads an acuity of which the testing distance is not known. */
  public static Result<Acuity> parse(String text) {
    return parse(text, Optional.empty());
  }

  /**
   * Reads an acuity.
   *
   * @param text the acuity as written; case does not matter
   * @param distance the testing distance, which may explain an unusual fraction
   */
  public static Result<Acuity> parse(String text, Optional<Quantity> distance) {
    String plain = text.strip().toLowerCase(Locale.ROOT);
    Matcher fraction = FRACTION.matcher(plain);
    if (fraction.matches()) {
      return fraction(text, fraction, distance);
    }
    Matcher low = LOW.matcher(plain);
    if (low.matches()) {
      return Result.ok(low(low));
    }
    return other(text, plain);
  }

  /**
   * Writes an acuity so that it is read as the same again beside the same testing distance.
   *
   * <p>A fraction names its unit where the bare one would be refused, or taken for another: 3/60 in
   * metres beside a distance of 3 ft.
   */
  public static String write(Acuity acuity, Optional<Quantity> distance) {
    return acuity instanceof Acuity.Fraction fraction ? of(fraction, distance) : acuity.toString();
  }

  static String of(Acuity.Fraction fraction) {
    return of(fraction, Optional.empty());
  }

  private static String of(Acuity.Fraction fraction, Optional<Quantity> distance) {
    String suffix = fraction.letters() == 0 ? "" : signed(fraction.letters());
    String bare =
        fraction.numerator().toPlainString()
            + "/"
            + fraction.denominator().toPlainString()
            + suffix;
    boolean clear =
        parse(bare, distance).map(fraction::equals) instanceof Result.Ok<Boolean> ok && ok.value();
    return clear ? bare : bare + " " + fraction.unit().text();
  }

  private static String signed(int letters) {
    return letters > 0 ? "+" + letters : Integer.toString(letters);
  }

  private static Result<Acuity> other(String text, String plain) {
    for (JaegerType type : JaegerType.ALL) {
      if (type.word().equalsIgnoreCase(plain)) {
        return Result.ok(new Acuity.Jaeger(type));
      }
    }
    for (Form form : FORMS) {
      Matcher matcher = form.pattern().matcher(plain);
      if (matcher.matches()) {
        return Result.ok(form.make().apply(matcher));
      }
    }
    return Result.refused(unreadable(text, plain));
  }

  private static Fault unreadable(String text, String plain) {
    String advice =
        plain.matches("[+-]?" + NUMBER)
            ? "a bare number may be a decimal, a logMAR or a letter count: say which"
            : "";
    return new Fault("", "\"" + text + "\"", NOTATIONS, advice);
  }

  private static Acuity low(Matcher low) {
    LowVision category = LowVision.COUNTING_FINGERS;
    for (LowVision candidate : LowVision.values()) {
      if (candidate.abbreviation().equalsIgnoreCase(low.group(1))) {
        category = candidate;
      }
    }
    Optional<Quantity> distance =
        Optional.ofNullable(low.group(2)).map(digits -> Quantity.of(digits, unit(low.group(3))));
    return new Acuity.Low(category, distance);
  }

  private static Result<Acuity> fraction(String text, Matcher parts, Optional<Quantity> distance) {
    BigDecimal numerator = new BigDecimal(parts.group(1));
    BigDecimal denominator = new BigDecimal(parts.group(2));
    int letters = parts.group(3) == null ? 0 : Integer.parseInt(parts.group(3));
    Optional<Unit> unit =
        Optional.ofNullable(parts.group(4))
            .map(AcuityText::unit)
            .or(() -> explained(numerator, distance))
            .or(() -> SnellenLines.unitOf(numerator, denominator));
    return unit.<Result<Acuity>>map(
            known -> Result.ok(new Acuity.Fraction(numerator, denominator, known, letters)))
        .orElseGet(() -> Result.refused(SnellenLines.mixed(text, numerator)));
  }

  private static Optional<Unit> explained(BigDecimal numerator, Optional<Quantity> distance) {
    return distance
        .filter(known -> known.value().compareTo(numerator) == 0)
        .map(Quantity::unit)
        .filter(known -> known.equals(Unit.METRE) || known.equals(Unit.FOOT));
  }

  private static Unit unit(String text) {
    return text.equals("m") ? Unit.METRE : text.equals("cm") ? Unit.CENTIMETRE : Unit.FOOT;
  }

  private static BigDecimal number(Matcher matcher) {
    String digits = matcher.group(1);
    return new BigDecimal(digits.startsWith("+") ? digits.substring(1) : digits);
  }

  private record Form(Pattern pattern, Function<Matcher, Acuity> make) {
    Form(String regex, Function<Matcher, Acuity> make) {
      this(Pattern.compile(regex), make);
    }
  }
}
