package org.isopter.mapper.foreign.value;

import java.math.BigDecimal;
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
import org.isopter.mapper.foreign.vocabulary.Truth;
import org.isopter.mapper.foreign.vocabulary.Vocabulary;
import org.isopter.mapper.json.PlacedLeaf;
import org.isopter.mapper.json.Raw;
import org.isopter.mapper.json.RawJson;
import org.isopter.model.finding.Datum;
import org.isopter.model.finding.DatumTexts;
import org.isopter.model.finding.Spec;
import org.isopter.model.value.Unit;
import org.isopter.model.wire.ValueType;

/** Takes the value of an observation or a component as its spec wants it, however it is written. */
public final class ForeignValues {

  private static final Pattern RATIO =
      Pattern.compile("(\\d+(?:\\.\\d+)?)\\s*/\\s*(\\d+(?:\\.\\d+)?)");

  private static final BigDecimal HUNDRED = BigDecimal.valueOf(100);

  private final Vocabulary vocabulary;
  private final Place holder;
  private final Optional<String> implied;

  public ForeignValues(Vocabulary vocabulary, Place holder) {
    this(vocabulary, holder, Optional.empty());
  }

  /**
   * Makes a reader.
   *
   * @param implied the UCUM code of the unit that the code of the observation names
   */
  public ForeignValues(Vocabulary vocabulary, Place holder, Optional<String> implied) {
    this.vocabulary = vocabulary;
    this.holder = holder;
    this.implied = implied;
  }

  /**
   * Takes the value.
   *
   * @throws Refusal when there is no value, or one that the finding forbids
   */
  public Datum take(Spec spec) throws Refusal {
    return switch (ValueType.of(spec)) {
      case QUANTITY -> new Measures(vocabulary, holder, implied).take((Spec.Measure) spec);
      case INTEGER -> count((Spec.Count) spec);
      case CONCEPT -> new Datum.Coded(new CodedValues(vocabulary, holder).take((Spec.Coded) spec));
      case TRUTH -> truth(spec);
      case TEXT -> text(spec);
      case RATIO -> ratio((Spec.Ratio) spec);
    };
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
      quantity.get().take(RuleId.PERCENT_AS_RATIO, "value");
      return new Datum.Ratio(percent, HUNDRED, spec.unit());
    }
    Matcher text = RATIO.matcher(holder.text("valueString").strip());
    if (!text.matches()) {
      throw unfit(spec);
    }
    holder.take(RuleId.TEXT_QUANTITY, "valueString");
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
      quantity.take(RuleId.UNIT_OF_RATIO, "value");
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
    return unfit(holder, DatumTexts.wanted(spec));
  }

  /**
   * Refuses a second value beside the first: FHIR has one, and two may say two things.
   *
   * @throws Refusal when there is a second value
   */
  public static void refuseSecond(Place holder) throws Refusal {
    List<String> values =
        holder.value() instanceof Raw.Obj object
            ? object.members().keySet().stream().filter(n -> n.startsWith("value")).toList()
            : List.of();
    if (values.size() > 1) {
      throw Refusal.of(Why.VALUE_UNFIT, holder.at(), String.join(" and ", values), "one value");
    }
  }

  /** Returns the refusal of whatever value a holder has. */
  public static Refusal unfit(Place holder, String wanted) {
    if (holder.value() instanceof Raw.Obj object) {
      for (String name : object.members().keySet()) {
        if (name.startsWith("value")) {
          String seen = RawJson.write(object.members().get(name));
          return Refusal.of(
              Why.VALUE_UNFIT, PlacedLeaf.step(holder.at(), name), shorten(seen), wanted);
        }
      }
    }
    return Refusal.of(Why.NO_VALUE, holder.at(), "no value", wanted);
  }

  private static String shorten(String text) {
    return text.length() <= 60 ? text : text.substring(0, 57) + "...";
  }
}
