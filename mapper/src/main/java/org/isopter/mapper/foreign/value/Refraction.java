package org.isopter.mapper.foreign.value;

import java.math.BigDecimal;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.isopter.mapper.foreign.ledger.Place;
import org.isopter.mapper.foreign.ledger.Refusal;
import org.isopter.mapper.foreign.ledger.RuleId;
import org.isopter.mapper.foreign.ledger.Why;
import org.isopter.mapper.foreign.vocabulary.Habits;
import org.isopter.mapper.foreign.vocabulary.Vocabulary;
import org.isopter.model.finding.Answers;
import org.isopter.model.finding.Datum;
import org.isopter.model.finding.Finding;
import org.isopter.model.finding.Part;
import org.isopter.model.finding.Span;
import org.isopter.model.finding.Spec;
import org.isopter.model.value.Concept;
import org.isopter.model.value.Outcome;
import org.isopter.model.value.Site;
import org.isopter.model.value.Unit;

/** What is said of a refraction in other ways than the record says it: prisms, zeros. */
public final class Refraction {

  private static final BigDecimal STRAIGHT = BigDecimal.valueOf(180);
  private static final Spec.Measure AMOUNT =
      new Spec.Measure(List.of(Span.of(Unit.PRISM_DIOPTRE, "0.25", "100")), 2);
  private static final Spec.Measure DIRECTION =
      new Spec.Measure(List.of(Span.of(Unit.DEGREE, "0", "360")), 0);

  private final Vocabulary vocabulary;
  private final Finding<?> finding;
  private final Map<String, Outcome<Datum>> parts;

  public Refraction(Vocabulary vocabulary, Finding<?> finding, Map<String, Outcome<Datum>> parts) {
    this.vocabulary = vocabulary;
    this.finding = finding;
    this.parts = parts;
  }

  /**
   * Takes a prism whose base is given as a word or as an angle.
   *
   * @throws Refusal when the prism has no base, or one that is not known
   */
  public void prism(Place amount, Optional<Place> base, Site eye) throws Refusal {
    Datum strength = new ForeignValues(vocabulary, amount).take(AMOUNT);
    if (base.isEmpty()) {
      throw Refusal.of(Why.PART_UNFIT, amount.at(), "a prism without its base", "its base too");
    }
    String word = word(base.get(), eye);
    boolean vertical = word.equals("up") || word.equals("down");
    String key = vertical ? "vertical" : "horizontal";
    put(key + "-prism", strength, amount);
    put(key + "-base", answer(key + "-base", word), base.get());
  }

  /** A cylinder of no power is no cylinder, and a horizontal axis is written 180. */
  public void zeros(Place at) {
    boolean flat = isZero("cylinder");
    if (flat && !parts.containsKey("axis")) {
      parts.remove("cylinder");
      at.ledger().used(RuleId.CYLINDER_ZERO);
    } else if (isZero("axis")) {
      parts.put("axis", Outcome.found(new Datum.Measure(STRAIGHT, Unit.DEGREE)));
      at.ledger().used(RuleId.AXIS_ZERO);
    }
  }

  private boolean isZero(String key) {
    return Optional.ofNullable(parts.get(key)).flatMap(Outcome::ifFound).orElse(null)
            instanceof Datum.Measure measure
        && measure.value().signum() == 0;
  }

  private void put(String key, Datum datum, Place at) throws Refusal {
    if (parts.putIfAbsent(key, Outcome.found(datum)) != null) {
      throw Refusal.of(Why.PART_UNFIT, at.at(), "a second " + key, "one prism of each direction");
    }
  }

  private Datum answer(String key, String word) throws Refusal {
    Optional<Concept> concept =
        Vocabulary.partNamed(finding, key)
            .map(Part::spec)
            .filter(Spec.Coded.class::isInstance)
            .map(spec -> ((Spec.Coded) spec).answers())
            .flatMap((Answers answers) -> answers.byWord(word));
    return new Datum.Coded(
        concept.orElseThrow(() -> Refusal.of(Why.PART_UNFIT, "", word, "a base of " + key)));
  }

  private String word(Place base, Site eye) throws Refusal {
    String text = base.text("valueString") + base.text("valueCode");
    Optional<Place> concept = base.child("valueCodeableConcept");
    if (concept.isPresent()) {
      return named(base, concept.get());
    }
    if (!text.isEmpty()) {
      base.take(RuleId.PRISM_WORD, "valueString", "valueCode");
      return direction(base, text);
    }
    Datum.Measure angle = (Datum.Measure) new ForeignValues(vocabulary, base).take(DIRECTION);
    base.ledger().used(RuleId.PRISM_ANGLE);
    return direction(base, angle.value(), eye);
  }

  private static String named(Place base, Place concept) throws Refusal {
    for (Place coding : concept.list("coding")) {
      if (coding.text("system").equals("http://hl7.org/fhir/vision-base-codes")) {
        coding.take(RuleId.PRISM_WORD, "system", "code");
        return direction(base, coding.text("code"));
      }
    }
    concept.take(RuleId.PRISM_WORD, "text");
    return direction(base, concept.text("text"));
  }

  private static String direction(Place base, String text) throws Refusal {
    return switch (Habits.plain(text)) {
      case "up", "base up", "bu" -> "up";
      case "down", "base down", "bd" -> "down";
      case "in", "base in", "bi" -> "in";
      case "out", "base out", "bo" -> "out";
      default ->
          throw Refusal.of(Why.PART_UNFIT, base.at(), "\"" + text + "\"", "up, down, in or out");
    };
  }

  /**
   * Angles are counted as the examiner sees the eye, from the examiner's right over up: 0 lies at
   * the nose of the right eye and at the temple of the left (ISO 8429).
   */
  private static String direction(Place base, BigDecimal angle, Site eye) throws Refusal {
    return switch (angle.intValue()) {
      case 90 -> "up";
      case 270 -> "down";
      case 0, 360 -> eye == Site.RIGHT ? "in" : "out";
      case 180 -> eye == Site.RIGHT ? "out" : "in";
      default ->
          throw Refusal.of(
              Why.PART_UNFIT,
              base.at(),
              angle + " deg",
              "0, 90, 180 or 270: an oblique base is two prisms");
    };
  }
}
