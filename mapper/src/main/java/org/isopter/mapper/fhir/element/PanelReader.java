package org.isopter.mapper.fhir.element;

import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.isopter.model.finding.Answers;
import org.isopter.model.finding.Choice;
import org.isopter.model.finding.Datum;
import org.isopter.model.finding.Decoded;
import org.isopter.model.finding.EncodedValue;
import org.isopter.model.finding.Layout;
import org.isopter.model.finding.Part;
import org.isopter.model.finding.Variant;
import org.isopter.model.value.Absence;
import org.isopter.model.value.Concept;
import org.isopter.model.value.Outcome;
import org.isopter.model.value.Result;
import org.isopter.model.wire.ObservationMember;
import org.isopter.model.wire.ValueType;

/** Takes the value and the components of an observation, as the layout of its finding says. */
public final class PanelReader<V> {

  private static final Answers REASONS = Answers.of(Absence.class);

  private final ElementCursor observation;
  private final Layout<V> layout;
  private final Map<String, ElementCursor> components = new HashMap<>();
  private final Map<String, ElementCursor> places = new HashMap<>();

  private PanelReader(ElementCursor observation, Layout<V> layout) {
    this.observation = observation;
    this.layout = layout;
    observation.objects(ObservationMember.COMPONENT.label()).forEach(this::index);
  }

  /** Takes the value; empty when a fault was reported. */
  public static <V> Optional<Decoded<V>> read(ElementCursor observation, Layout<V> layout) {
    return new PanelReader<>(observation, layout).taken();
  }

  /** Takes the dataAbsentReason, where there is one. */
  public static Optional<Absence> absence(ElementCursor holder) {
    return Codings.oneOf(holder, ObservationMember.ABSENT_REASON.label(), REASONS)
        .map(Absence.class::cast);
  }

  private Optional<Decoded<V>> taken() {
    Optional<Concept> notation = layout.choice().flatMap(this::notation);
    Optional<Variant> variant = layout.variant(notation);
    if (variant.isEmpty()) {
      return Optional.empty();
    }
    Optional<Datum> value =
        variant.get().value().flatMap(spec -> spec.fold(new DatumReader(observation)));
    if (variant.get().value().isPresent() && value.isEmpty()) {
      return Optional.empty();
    }
    EncodedValue panel = new EncodedValue(notation, value, parts(variant.get().parts()));
    components.values().forEach(this::unknown);
    Result<Decoded<V>> whole = layout.read(panel);
    whole.faults().forEach(fault -> observation.fault(fault.at(place(fault.path()))));
    return whole instanceof Result.Ok<Decoded<V>> ok ? Optional.of(ok.value()) : Optional.empty();
  }

  private void index(ElementCursor component) {
    List<ElementCursor> codings =
        component.object("code").map(code -> code.objects("coding")).orElse(List.of());
    String token =
        codings.size() == 1
            ? codings.get(0).peek("system") + "|" + codings.get(0).peek("code")
            : codings.size() + " codings";
    ElementCursor other = components.put(token, component);
    if (other != null) {
      component.fault("code", "a second component " + token, "one component of each code");
    }
  }

  private Optional<Concept> notation(Choice<?, ?> choice) {
    ElementCursor component = components.remove(choice.code().token());
    if (component == null) {
      observation.fault(
          "component", "no component " + choice.code().token(), choice.notations().choices());
      return Optional.empty();
    }
    Codings.expect(component, "code", choice.code());
    return Codings.oneOf(component, ValueType.CONCEPT.member(), choice.notations());
  }

  private Map<String, Outcome<Datum>> parts(List<? extends Part<?, ?>> wanted) {
    Map<String, Outcome<Datum>> parts = new LinkedHashMap<>();
    for (Part<?, ?> part : wanted) {
      ElementCursor component = components.remove(part.code().token());
      if (component != null) {
        places.put(part.key(), component);
        Codings.expect(component, "code", part.code());
        part(component, part).ifPresent(outcome -> parts.put(part.key(), outcome));
      }
    }
    return parts;
  }

  private static Optional<Outcome<Datum>> part(ElementCursor component, Part<?, ?> part) {
    return component.has(ObservationMember.ABSENT_REASON.label())
        ? absence(component).map(Outcome::absent)
        : part.spec().fold(new DatumReader(component)).map(Outcome::found);
  }

  private void unknown(ElementCursor component) {
    List<String> known =
        layout.variants().stream()
            .flatMap(variant -> variant.parts().stream())
            .map(part -> part.code().token())
            .distinct()
            .toList();
    String seen =
        component.object("code").map(code -> code.objects("coding")).orElse(List.of()).stream()
            .map(coding -> coding.peek("system") + "|" + coding.peek("code"))
            .toList()
            .toString();
    component.fault("code", seen, known.isEmpty() ? "no component" : "one of " + known);
  }

  private String place(String key) {
    ElementCursor component = places.get(key);
    if (component != null) {
      return component.path();
    }
    return key.equals(Part.VALUE)
        ? observation.path() + ".value"
        : observation.path() + ".component";
  }
}
