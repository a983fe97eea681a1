package org.isopter.mapper.foreign.value;

import java.math.BigDecimal;
import java.math.RoundingMode;
import java.util.List;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.isopter.mapper.foreign.ledger.Digits;
import org.isopter.mapper.foreign.ledger.Ledger;
import org.isopter.mapper.foreign.ledger.Place;
import org.isopter.mapper.foreign.ledger.Refusal;
import org.isopter.mapper.foreign.ledger.RuleId;
import org.isopter.mapper.foreign.ledger.Why;
import org.isopter.mapper.foreign.vocabulary.Habits;
import org.isopter.mapper.foreign.vocabulary.Vocabulary;
import org.isopter.mapper.json.PlacedLeaf;
import org.isopter.model.finding.Datum;
import org.isopter.model.finding.DatumTexts;
import org.isopter.model.finding.Span;
import org.isopter.model.finding.Spec;
import org.isopter.model.value.Unit;

/** Takes a number with its unit, which stands beside it, in a text, or in the words of the code. */
final class Measures {

  private static final String UNIT_IN_CODE = RuleId.UNIT_IN_CODE;

  private static final Pattern MEASURE = Pattern.compile("([+-]?\\d+(?:\\.\\d+)?)\\s*(.*)");

  /** A comma before one or two digits is decimal: with thousands there would be three. */
  private static final Pattern COMMA = Pattern.compile("^([+-]?\\d{1,3}),(\\d{1,2})(?![\\d.,])");

  /** A number that begins with its point, such as .3. */
  private static final Pattern NO_ZERO = Pattern.compile("^(?<sign>[+-]?)\\.(\\d)");

  /** One kilopascal in mmHg: 1 mmHg is 133.322387415 Pa (UCUM: 1 m[Hg] is 133.3220 kPa). */
  private static final BigDecimal MM_HG_PER_KPA =
      BigDecimal.ONE.divide(new BigDecimal("0.133322"), 9, RoundingMode.HALF_EVEN);

  private final Vocabulary vocabulary;
  private final Place holder;
  private final Optional<String> implied;

  /**
   * Makes a reader.
   *
   * @param implied the UCUM code of the unit that the code of the observation names
   */
  Measures(Vocabulary vocabulary, Place holder, Optional<String> implied) {
    this.vocabulary = vocabulary;
    this.holder = holder;
    this.implied = implied;
  }

  /** Takes the number and its unit. */
  Datum take(Spec.Measure spec) throws Refusal {
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
        .take(kept.scale() == value.scale() ? Ledger.CATALOGUE : RuleId.DIGITS_BEYOND, "value");
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
            PlacedLeaf.step(quantity.at(), member),
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
      holder.take(RuleId.TEXT_QUANTITY, "valueString");
      return new Datum.Measure(BigDecimal.ZERO, Unit.DIOPTRE);
    }
    String point = COMMA.matcher(text.strip()).replaceFirst("$1.$2");
    Matcher parts = MEASURE.matcher(NO_ZERO.matcher(point).replaceFirst("${sign}0.$2"));
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
        holder.take(RuleId.TEXT_QUANTITY, "valueString");
        return new Datum.Measure(value.get(), named.get());
      }
    }
    throw ForeignValues.unfit(holder, DatumTexts.wanted(spec));
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
    quantity.ledger().used(RuleId.UNIT_KILOPASCAL);
    BigDecimal mmHg = value.multiply(MM_HG_PER_KPA).setScale(1, RoundingMode.HALF_EVEN);
    return new Datum.Measure(mmHg, Unit.MM_HG);
  }
}
