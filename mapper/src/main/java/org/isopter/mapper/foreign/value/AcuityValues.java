package org.isopter.mapper.foreign.value;

import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.isopter.mapper.foreign.ledger.Digits;
import org.isopter.mapper.foreign.ledger.Place;
import org.isopter.mapper.foreign.ledger.Refusal;
import org.isopter.mapper.foreign.ledger.RuleId;
import org.isopter.mapper.foreign.ledger.Why;
import org.isopter.mapper.foreign.vocabulary.Coding;
import org.isopter.mapper.foreign.vocabulary.ForeignAcuity;
import org.isopter.mapper.foreign.vocabulary.LowVisionNames;
import org.isopter.mapper.foreign.vocabulary.Vocabulary;
import org.isopter.mapper.json.PlacedLeaf;
import org.isopter.mapper.json.RawJson;
import org.isopter.model.value.Code;
import org.isopter.model.value.Unit;

/** Takes the value of an acuity and returns it in the form in which a record writes it. */
public final class AcuityValues {

  private static final List<Unit> DISTANCES = List.of(Unit.METRE, Unit.FOOT);

  private final Vocabulary vocabulary;
  private final Place holder;
  private final Optional<String> notation;

  /**
   * Makes a reader.
   *
   * @param notation the notation that the code of the observation or its profile fixes
   */
  public AcuityValues(Vocabulary vocabulary, Place holder, Optional<String> notation) {
    this.vocabulary = vocabulary;
    this.holder = holder;
    this.notation = notation;
  }

  /**
   * Takes the acuity, for instance as {@code 6/12 m} or {@code 0.3 logMAR}.
   *
   * @throws Refusal when there is no value, or one in no known notation
   */
  public String take() throws Refusal {
    if (holder.has("valueRatio")) {
      return ratio(holder.child("valueRatio").orElseThrow());
    }
    if (holder.has("valueQuantity")) {
      return quantity(holder.child("valueQuantity").orElseThrow());
    }
    if (holder.has("valueCodeableConcept")) {
      return concept(holder.child("valueCodeableConcept").orElseThrow());
    }
    if (holder.has("valueString")) {
      return text(holder, "valueString");
    }
    if (holder.has("valueInteger")) {
      return letters();
    }
    throw ForeignValues.unfit(holder, "an acuity");
  }

  private String ratio(Place ratio) throws Refusal {
    Place over = side(ratio, "numerator");
    Place under = side(ratio, "denominator");
    String line = Digits.text(Digits.value(over)) + "/" + Digits.text(Digits.value(under));
    Optional<Unit> unit = unit(over);
    if (!unit.equals(unit(under))) {
      throw Refusal.of(
          Why.UNITS_DISAGREE, ratio.at(), "two units", "metres or feet in both places");
    }
    String rule = unit.isPresent() ? RuleId.ACUITY_RATIO : RuleId.ACUITY_RATIO_BARE;
    over.take(rule, "value");
    under.take(rule, "value");
    return unit.map(known -> line + " " + known.text()).orElse(line);
  }

  private Optional<Unit> unit(Place side) throws Refusal {
    String named = side.text("code") + side.text("unit");
    // A plain number says nothing of metres or feet, as does no unit at all.
    if (named.isEmpty() || side.text("code").equals("1")) {
      side.take(RuleId.ACUITY_RATIO_BARE, "system", "code");
      return Optional.empty();
    }
    return Optional.of(new Units(vocabulary.habits(), DISTANCES).take(side));
  }

  private static Place side(Place ratio, String name) throws Refusal {
    Optional<Place> side = ratio.child(name);
    if (side.isEmpty()) {
      throw Refusal.of(Why.VALUE_UNFIT, ratio.at(), "no " + name, "a fraction");
    }
    return side.get();
  }

  private String quantity(Place quantity) throws Refusal {
    String digits = Digits.text(Digits.value(quantity));
    String in = notationOf(quantity);
    String rule = rule(in);
    quantity.take(rule, "value");
    return switch (in) {
      case "N" -> "N" + digits;
      case "J" -> "J" + digits;
      default -> digits + " " + in;
    };
  }

  private static String rule(String notation) {
    return switch (notation) {
      case "N", "J", "M" -> RuleId.ACUITY_PRINT_SIZE;
      case "letters" -> RuleId.ACUITY_LETTERS;
      default -> notation.equals("decimal") ? RuleId.ACUITY_DECIMAL : RuleId.ACUITY_LOGMAR;
    };
  }

  private String notationOf(Place quantity) throws Refusal {
    String code = quantity.text("code");
    String unit = quantity.text("unit");
    boolean ucum = quantity.text("system").equals(Code.UCUM);
    if (ucum && code.equals("N")) {
      throw Refusal.of(Why.UNITS_DISAGREE, quantity.at(), "newton", "N as a size of print");
    }
    Units.refuseForeignSystem(quantity, code);
    Optional<String> coded = vocabulary.habits().notation(code);
    Optional<String> named = vocabulary.habits().notation(unit);
    Optional<String> fixed = notation.map(AcuityValues::text);
    String in = coded.or(() -> named).or(() -> fixed).orElse("");
    boolean otherCode = coded.isEmpty() && !code.isEmpty() && !code.equals("1");
    boolean otherUnit = named.isEmpty() && !unit.isEmpty() && !unit.equals("1");
    if (in.isEmpty() || otherCode || otherUnit) {
      String seen = RawJson.write(quantity.value());
      throw Refusal.of(
          Why.NOTATION_NOT_STATED, quantity.at(), seen, "logMAR, decimal, letters, N or M");
    }
    agree(quantity, in, named);
    agree(quantity, in, fixed);
    String rule = coded.or(() -> named).isPresent() ? rule(in) : RuleId.ACUITY_NOTATION_IMPLIED;
    quantity.take(rule, "system", "code");
    quantity.take(rule, "unit");
    return in;
  }

  private static void agree(Place quantity, String in, Optional<String> other) throws Refusal {
    if (other.isPresent() && !other.get().equals(in)) {
      throw Refusal.of(
          Why.UNITS_DISAGREE, quantity.at(), in + " and " + other.get(), "one notation");
    }
  }

  /** Returns the text that stands behind a number of a notation of the catalogue. */
  private static String text(String word) {
    return switch (word) {
      case "logmar" -> "logMAR";
      case "jaeger" -> "J";
      default -> word;
    };
  }

  private String concept(Place concept) throws Refusal {
    Optional<String> coded = coded(concept);
    if (coded.isEmpty()) {
      Optional<String> text = ForeignAcuity.written(concept.text("text"), vocabulary.habits());
      return text.isPresent() ? text(concept, "text") : display(concept);
    }
    for (Place coding : concept.list("coding")) {
      agreeing(coding, "display", coded.get());
    }
    return agreeing(concept, "text", coded.get()).orElse(coded.get());
  }

  /** Takes words that say the same acuity as a code, perhaps with its distance. */
  private Optional<String> agreeing(Place place, String name, String coded) throws Refusal {
    Optional<String> words = ForeignAcuity.written(place.text(name), vocabulary.habits());
    if (words.isPresent() && !ForeignAcuity.agree(coded, words.get())) {
      throw Refusal.of(
          Why.VALUE_UNFIT,
          PlacedLeaf.step(place.at(), name),
          words.get() + " beside " + coded,
          "one acuity");
    }
    if (words.isPresent()) {
      place.take(RuleId.ACUITY_TEXT, name);
    }
    return words;
  }

  private Optional<String> coded(Place concept) throws Refusal {
    List<String> found = new ArrayList<>();
    for (Coding coding :
        Coding.of(concept, t -> vocabulary.habits().acuity(t).isPresent(), vocabulary)) {
      Optional<String> acuity = vocabulary.habits().acuity(coding.token());
      if (acuity.isPresent()) {
        found.add(acuity.get());
        coding.take(RuleId.ACUITY_FINDING_CODE, LowVisionNames.display(coding.token()));
      }
    }
    if (found.stream().distinct().count() > 1) {
      throw Refusal.of(Why.VALUE_UNFIT, concept.at(), String.join(" and ", found), "one acuity");
    }
    return found.stream().findFirst();
  }

  private String display(Place concept) throws Refusal {
    List<Place> codings = concept.list("coding");
    if (codings.size() == 1 && Coding.isLocal(codings.get(0))) {
      Place coding = codings.get(0);
      String said = text(coding, "display");
      Optional<String> code = ForeignAcuity.written(coding.text("code"), vocabulary.habits());
      if (code.isPresent() && !ForeignAcuity.agree(code.get(), said)) {
        throw Refusal.of(
            Why.VALUE_UNFIT, coding.at(), code.get() + " beside " + said, "one acuity");
      }
      return said;
    }
    throw ForeignValues.unfit(holder, "the code of an acuity, or an acuity in words");
  }

  private String text(Place place, String name) throws Refusal {
    Optional<String> written = ForeignAcuity.written(place.text(name), vocabulary.habits());
    Optional<BigDecimal> number = Digits.plain(place.text(name));
    boolean counted = notation.filter(word -> !word.equals("jaeger")).isPresent();
    if (written.isEmpty() && number.isPresent() && counted) {
      place.take(RuleId.ACUITY_NOTATION_IMPLIED, name);
      return number.get().toPlainString() + " " + text(notation.orElseThrow());
    }
    if (written.isEmpty()) {
      throw Refusal.of(
          number.isPresent() ? Why.NOTATION_NOT_STATED : Why.VALUE_UNFIT,
          PlacedLeaf.step(place.at(), name),
          "\"" + place.text(name) + "\"",
          "one acuity with its notation, such as 6/9-2, 20/40, 0.3 logMAR or CF 1 m");
    }
    place.take(RuleId.ACUITY_TEXT, name);
    return written.get();
  }

  private String letters() throws Refusal {
    String count = holder.number("valueInteger").orElse("");
    if (!notation.equals(Optional.of("letters"))) {
      throw Refusal.of(Why.NOTATION_NOT_STATED, holder.at(), count, "a notation beside the number");
    }
    holder.take(RuleId.ACUITY_LETTERS, "valueInteger");
    return count + " letters";
  }
}
