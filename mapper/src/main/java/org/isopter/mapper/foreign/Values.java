package org.isopter.mapper.foreign;

import java.math.BigDecimal;
import java.math.RoundingMode;
import java.util.List;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.isopter.model.shape.Datum;
import org.isopter.model.shape.Span;
import org.isopter.model.shape.Spec;
import org.isopter.model.shape.Texts;
import org.isopter.model.value.Unit;

/** Takes the value of an observation or a component as its spec wants it, however it is written. */
final class Values {

  private static final String UNIT_IN_CODE = "unit-in-code";

  private static final Pattern MEASURE = Pattern.compile("([+-]?\\d+(?:\\.\\d+)?)\\s*(.*)");

  /** A comma before one or two digits is decimal: with thousands there would be three. */
  private static final Pattern COMMA = Pattern.compile("^([+-]?\\d{1,3}),(\\d{1,2})(?![\\d.,])");

  private static final Pattern RATIO =
      Pattern.compile("(\\d+(?:\\.\\d+)?)\\s*/\\s*(\\d+(?:\\.\\d+)?)");

  /** One kilopascal in mmHg: 1 mmHg is 133.322387415 Pa (UCUM: 1 m[Hg] is 133.3220 kPa). */
  private static final BigDecimal MM_HG_PER_KPA =
      BigDecimal.ONE.divide(new BigDecimal("0.133322"), 9, RoundingMode.HALF_EVEN);

  private static final BigDecimal HUNDRED = BigDecimal.valueOf(100);

  private final Vocabulary vocabulary;
  private final Place holder;
  private final Optional<String> implied;

  Values(Vocabulary vocabulary, Place holder) {
    this(vocabulary, holder, Optional.empty());
  }

  /**
   * Makes a reader.
   *
   * @param implied the UCUM code of the unit that the code of the observation names
   */
  Values(Vocabulary vocabulary, Place holder, Optional<String> implied) {
    this.vocabulary = vocabulary;
    this.holder = holder;
    this.implied = implied;
  }

  /** Takes the value. */
  Datum take(Spec spec) throws Refusal {
    if (spec instanceof Spec.Measure measure) {
      return measure(measure);
    }
    if (spec instanceof Spec.Coded coded) {
      return new Datum.Coded(new CodedValues(vocabulary, holder).take(coded));
    }
    if (spec instanceof Spec.Ratio ratio) {
      return ratio(ratio);
    }
    if (spec instanceof Spec.Count count) {
      return count(count);
    }
    return spec instanceof Spec.Truth ? truth(spec) : text(spec);
  }

  private Datum measure(Spec.Measure spec) throws Refusal {
    List<Unit> units = units(spec);
    Units known = new Units(vocabulary.habits(), units);
    Optional<Place> quantity = holder.child("valueQuantity");
    if (quantity.isEmpty()) {
      return written(spec, known);
    }
    BigDecimal value = Digits.value(quantity.get());
    if (implied.isPresent()) {
      refuseOther(quantity.get(), implied.get());
    }
    if (units.contains(Unit.MM_HG) && isKilopascal(quantity.get())) {
      return kilopascal(quantity.get(), value);
    }
    boolean bare = (quantity.get().text("code") + quantity.get().text("unit")).isEmpty();
    Optional<Unit> named = bare ? implied.flatMap(known::unit) : Optional.empty();
    Unit unit = named.isPresent() ? named.get() : known.take(quantity.get());
    named.ifPresent(any -> holder.ledger().used(UNIT_IN_CODE));
    BigDecimal kept = withoutZerosBeyond(value, spec.decimals());
    quantity
        .get()
        .take(kept.scale() == value.scale() ? Ledger.CATALOGUE : "digits-beyond", "value");
    return new Datum.Measure(kept, unit);
  }

  private static Optional<Unit> agreeing(Optional<Unit> written, Optional<Unit> inCode) {
    return inCode.isEmpty() || written.equals(inCode) ? written : Optional.empty();
  }

  /** The unit that the code names and the one beside the number must be the same. */
  private void refuseOther(Place quantity, String named) throws Refusal {
    for (String member : List.of("code", "unit")) {
      Optional<String> written = vocabulary.habits().ucum(quantity.text(member));
      if (written.isPresent() && !written.get().equals(named)) {
        throw Refusal.of(
            Why.UNITS_DISAGREE,
            Placed.step(quantity.at(), member),
            "\"" + quantity.text(member) + "\" beside " + named + " in the code",
            "one unit");
      }
    }
  }

  private static List<Unit> units(Spec.Measure spec) {
    return spec.spans().stream().map(Span::unit).toList();
  }

  private static BigDecimal withoutZerosBeyond(BigDecimal value, int decimals) {
    boolean zeros = value.scale() > decimals && value.stripTrailingZeros().scale() <= decimals;
    return zeros ? value.setScale(decimals) : value;
  }

  private Datum written(Spec.Measure spec, Units known) throws Refusal {
    String text = holder.text("valueString");
    if (units(spec).contains(Unit.DIOPTRE) && Habits.plain(text).matches("plano|plan|pl")) {
      holder.take("text-quantity", "valueString");
      return new Datum.Measure(BigDecimal.ZERO, Unit.DIOPTRE);
    }
    Matcher parts = MEASURE.matcher(COMMA.matcher(text.strip()).replaceFirst("$1.$2"));
    Optional<BigDecimal> whole = holder.number("valueInteger").flatMap(Digits::plain);
    Optional<Unit> inCode = implied.flatMap(known::unit);
    if (whole.isPresent() && inCode.isPresent()) {
      holder.take(UNIT_IN_CODE, "valueInteger");
      return new Datum.Measure(whole.get(), inCode.get());
    }
    if (parts.matches()) {
      String unit = parts.group(2).strip();
      Optional<Unit> named =
          unit.isEmpty() ? known.none(unit).or(() -> inCode) : agreeing(known.unit(unit), inCode);
      Optional<BigDecimal> value = Digits.plain(parts.group(1));
      if (named.isPresent() && value.isPresent()) {
        holder.take("text-quantity", "valueString");
        return new Datum.Measure(value.get(), named.get());
      }
    }
    throw unfit(spec);
  }

  private boolean isKilopascal(Place quantity) throws Refusal {
    Optional<String> code = vocabulary.habits().ucum(quantity.text("code"));
    Optional<String> unit = vocabulary.habits().ucum(quantity.text("unit"));
    if (code.isPresent() && unit.isPresent() && !code.equals(unit)) {
      throw Refusal.of(
          Why.UNITS_DISAGREE,
          quantity.at() + "/unit",
          "\"" + quantity.text("unit") + "\" beside the code \"" + quantity.text("code") + "\"",
          "one unit");
    }
    boolean coded = !quantity.text("code").isEmpty();
    return (coded ? code : unit).filter("kPa"::equals).isPresent();
  }

  private static Datum kilopascal(Place quantity, BigDecimal value) {
    // The quantity as sent is left over on purpose: what was measured is in its digits.
    quantity.ledger().used("unit-kilopascal");
    BigDecimal mmHg = value.multiply(MM_HG_PER_KPA).setScale(1, RoundingMode.HALF_EVEN);
    return new Datum.Measure(mmHg, Unit.MM_HG);
  }

  private Datum ratio(Spec.Ratio spec) throws Refusal {
    Optional<Place> ratio = holder.child("valueRatio");
    if (ratio.isPresent()) {
      return new Datum.Ratio(
          side(ratio.get(), "numerator", spec),
          side(ratio.get(), "denominator", spec),
          spec.unit());
    }
    Optional<Place> quantity = holder.child("valueQuantity");
    if (quantity.isPresent() && spec.unit().equals(Unit.ONE)) {
      BigDecimal percent = Digits.value(quantity.get());
      new Units(vocabulary.habits(), List.of(Unit.PERCENT)).take(quantity.get());
      quantity.get().take("percent-as-ratio", "value");
      return new Datum.Ratio(percent, HUNDRED, spec.unit());
    }
    Matcher text = RATIO.matcher(holder.text("valueString").strip());
    if (!text.matches()) {
      throw unfit(spec);
    }
    holder.take("text-quantity", "valueString");
    return new Datum.Ratio(
        new BigDecimal(text.group(1)), new BigDecimal(text.group(2)), spec.unit());
  }

  private BigDecimal side(Place ratio, String name, Spec.Ratio spec) throws Refusal {
    Optional<Place> side = ratio.child(name);
    if (side.isEmpty()) {
      throw unfit(spec);
    }
    BigDecimal value = Digits.value(side.get());
    new Units(vocabulary.habits(), List.of(spec.unit())).take(side.get());
    side.get().take(Ledger.CATALOGUE, "value");
    return value;
  }

  private Datum count(Spec.Count spec) throws Refusal {
    Optional<BigDecimal> whole = Optional.empty();
    if (holder.has("valueInteger")) {
      whole = holder.number("valueInteger").flatMap(Digits::plain);
      holder.take(Ledger.CATALOGUE, "valueInteger");
    } else if (holder.has("valueQuantity")) {
      Place quantity = holder.child("valueQuantity").orElseThrow();
      whole = Optional.of(Digits.value(quantity));
      new Units(vocabulary.habits(), List.of(Unit.ONE)).take(quantity);
      quantity.take("unit-of-ratio", "value");
    }
    return whole
        .filter(number -> number.stripTrailingZeros().scale() <= 0)
        .filter(number -> number.abs().compareTo(BigDecimal.valueOf(Integer.MAX_VALUE)) < 0)
        .<Datum>map(number -> new Datum.Count(number.intValue()))
        .orElseThrow(() -> unfit(spec));
  }

  private Datum truth(Spec spec) throws Refusal {
    boolean yes = Truth.of(holder).orElseThrow(() -> unfit(spec));
    holder.take(Ledger.CATALOGUE, "valueBoolean");
    return new Datum.Truth(yes);
  }

  private Datum text(Spec spec) throws Refusal {
    String text = holder.text("valueString");
    if (text.isBlank()) {
      throw unfit(spec);
    }
    holder.take(Ledger.CATALOGUE, "valueString");
    return new Datum.Text(text.strip());
  }

  private Refusal unfit(Spec spec) {
    return unfit(holder, Texts.wanted(spec));
  }

  /** Refuses a second value beside the first: FHIR has one, and two may say two things. */
  static void refuseSecond(Place holder) throws Refusal {
    List<String> values =
        holder.value() instanceof Raw.Obj object
            ? object.members().keySet().stream().filter(n -> n.startsWith("value")).toList()
            : List.of();
    if (values.size() > 1) {
      throw Refusal.of(Why.VALUE_UNFIT, holder.at(), String.join(" and ", values), "one value");
    }
  }

  /** Returns the refusal of whatever value a holder has. */
  static Refusal unfit(Place holder, String wanted) {
    if (holder.value() instanceof Raw.Obj object) {
      for (String name : object.members().keySet()) {
        if (name.startsWith("value")) {
          String seen = RawJson.write(object.members().get(name));
          return Refusal.of(Why.VALUE_UNFIT, Placed.step(holder.at(), name), shorten(seen), wanted);
        }
      }
    }
    return Refusal.of(Why.NO_VALUE, holder.at(), "no value", wanted);
  }

  private static String shorten(String text) {
    return text.length() <= 60 ? text : text.substring(0, 57) + "...";
  }
}
