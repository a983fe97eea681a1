package org.isopter.profiles;

import java.math.BigDecimal;
import java.util.Map;
import org.isopter.model.exam.Fact;
import org.isopter.model.finding.Datum;
import org.isopter.model.finding.EncodedValue;
import org.isopter.model.finding.Part;
import org.isopter.model.value.Absence;
import org.isopter.model.value.Canonical;
import org.isopter.model.value.Code;
import org.isopter.model.value.Concept;
import org.isopter.model.value.Outcome;
import org.isopter.model.value.Unit;
import tools.jackson.databind.json.JsonMapper;
import tools.jackson.databind.node.ArrayNode;
import tools.jackson.databind.node.ObjectNode;

/** Writes a fact as the mapping page says, apart from any other writer: a witness of its own. */
final class Wire {

  private static final JsonMapper JSON = JsonMapper.builder().build();

  private final Fact<?> fact;
  private final ObjectNode observation = JSON.createObjectNode();

  private Wire(Fact<?> fact) {
    this.fact = fact;
  }

  static ObjectNode observation(Fact<?> fact) {
    Wire wire = new Wire(fact);
    wire.head();
    wire.outcome();
    wire.tail();
    return wire.observation;
  }

  private void head() {
    observation.put("resourceType", "Observation");
    observation.putObject("meta").putArray("profile").add(Canonical.profile(fact.finding().id()));
    ObjectNode identifier = observation.putArray("identifier").addObject();
    identifier.put("system", Canonical.identifier("record"));
    identifier.put("value", "r-1/" + fact.finding().id() + "." + fact.site().word());
    observation.put("status", "final");
    ArrayNode category = observation.putArray("category");
    concept(
        category.addObject(),
        new Code("http://terminology.hl7.org/CodeSystem/observation-category", "exam", "Exam"));
    ObjectNode code = observation.putObject("code");
    ArrayNode codings = code.putArray("coding");
    EncodedValue panel =
        fact.panel()
            .orElse(
                new EncodedValue(java.util.Optional.empty(), java.util.Optional.empty(), Map.of()));
    fact.finding()
        .codes()
        .at(fact.site(), panel, fact.method())
        .forEach(c -> coding(codings.addObject(), c));
    code.put("text", fact.finding().title());
    ObjectNode subject = observation.putObject("subject");
    subject.put("type", "Patient");
    subject.putObject("identifier").put("value", "p-1");
    observation.put("effectiveDateTime", "2026-03-02T09:30:00+01:00");
  }

  private void outcome() {
    fact.panel().flatMap(EncodedValue::value).ifPresent(value -> value(observation, value));
    fact.outcome().ifAbsent().ifPresent(reason -> absent(observation, reason));
  }

  private void tail() {
    concept(observation.putObject("bodySite"), fact.site().code());
    fact.method().ifPresent(method -> concept(observation.putObject("method"), method.code()));
    fact.panel().ifPresent(this::components);
  }

  private void components(EncodedValue panel) {
    ArrayNode components = JSON.createArrayNode();
    fact.finding()
        .layout()
        .choice()
        .ifPresent(
            choice -> {
              ObjectNode component = components.addObject();
              concept(component.putObject("code"), choice.code());
              concept(
                  component.putObject("valueCodeableConcept"),
                  panel.notation().orElseThrow().code());
            });
    panel.parts().forEach((key, value) -> component(components.addObject(), part(key), value));
    if (!components.isEmpty()) {
      observation.set("component", components);
    }
  }

  static void component(ObjectNode component, Part<?, ?> part, Outcome<Datum> outcome) {
    concept(component.putObject("code"), part.code());
    outcome.ifFound().ifPresent(value -> value(component, value));
    outcome.ifAbsent().ifPresent(reason -> absent(component, reason));
  }

  private Part<?, ?> part(String key) {
    return fact.finding().layout().variants().stream()
        .flatMap(variant -> variant.parts().stream())
        .filter(part -> part.key().equals(key))
        .findFirst()
        .orElseThrow();
  }

  static ObjectNode absent(ObjectNode holder, Absence reason) {
    concept(holder.putObject("dataAbsentReason"), reason.code());
    return holder;
  }

  static void concept(ObjectNode concept, Code code) {
    coding(concept.putArray("coding").addObject(), code);
  }

  static void coding(ObjectNode coding, Code code) {
    coding.put("system", code.system());
    coding.put("code", code.code());
    coding.put("display", code.display());
  }

  private static void quantity(ObjectNode quantity, BigDecimal value, Unit unit) {
    quantity.put("value", value);
    quantity.put("unit", unit.label());
    quantity.put("system", Code.UCUM);
    quantity.put("code", unit.ucum());
  }

  private static void value(ObjectNode holder, Datum datum) {
    datum.fold(new Put(holder));
  }

  private record Put(ObjectNode holder) implements Datum.Cases<ObjectNode> {
    @Override
    public ObjectNode measure(Datum.Measure measure) {
      quantity(holder.putObject("valueQuantity"), measure.value(), measure.unit());
      return holder;
    }

    @Override
    public ObjectNode count(Datum.Count count) {
      return holder.put("valueInteger", count.value());
    }

    @Override
    public ObjectNode coded(Datum.Coded coded) {
      Concept chosen = coded.concept();
      concept(holder.putObject("valueCodeableConcept"), chosen.code());
      return holder;
    }

    @Override
    public ObjectNode truth(Datum.Truth truth) {
      return holder.put("valueBoolean", truth.value());
    }

    @Override
    public ObjectNode text(Datum.Text text) {
      return holder.put("valueString", text.value());
    }

    @Override
    public ObjectNode ratio(Datum.Ratio ratio) {
      ObjectNode value = holder.putObject("valueRatio");
      quantity(value.putObject("numerator"), ratio.numerator(), ratio.unit());
      quantity(value.putObject("denominator"), ratio.denominator(), ratio.unit());
      return holder;
    }
  }
}
