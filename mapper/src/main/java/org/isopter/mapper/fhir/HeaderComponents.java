package org.isopter.mapper.fhir;

import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.isopter.mapper.fhir.element.Codings;
import org.isopter.mapper.fhir.element.DatumReader;
import org.isopter.mapper.fhir.element.DatumWriter;
import org.isopter.mapper.fhir.element.ElementCursor;
import org.isopter.mapper.fhir.element.Json;
import org.isopter.model.exam.Demographics;
import org.isopter.model.exam.ExamCodes;
import org.isopter.model.exam.Header;
import org.isopter.model.exam.Setting;
import org.isopter.model.finding.Datum;
import org.isopter.model.finding.EncodedValue;
import org.isopter.model.finding.Part;
import org.isopter.model.value.Code;
import org.isopter.model.value.Outcome;
import org.isopter.model.value.Result;
import org.isopter.model.wire.ExaminationElements;
import org.isopter.model.wire.ObservationMember;
import org.isopter.model.wire.ValueType;

/** The components of the panel: where it took place, and the person's age and sex. */
final class HeaderComponents {

  private static final List<String> KNOWN =
      Stream.concat(
              Stream.of(ExamCodes.SETTING),
              Demographics.LAYOUT.commonParts().stream().<Code>map(Part::code))
          .map(Code::token)
          .toList();

  private final ElementCursor panel;
  private final Map<String, ElementCursor> byCode = new HashMap<>();

  /** Finds the components of a panel; those that no header has are reported. */
  HeaderComponents(ElementCursor panel) {
    this.panel = panel;
    panel.objects(ObservationMember.COMPONENT.label()).forEach(this::index);
  }

  /** Writes what the header states of them. */
  static void write(Json json, Header header) {
    Map<String, Outcome<Datum>> parts = Demographics.LAYOUT.encode(header.demographics()).parts();
    if (header.setting().isEmpty() && parts.isEmpty()) {
      return;
    }
    json.list(
        ObservationMember.COMPONENT.label(),
        () -> {
          header.setting().ifPresent(at -> write(json, ExamCodes.SETTING, new Datum.Coded(at)));
          for (Part<?, ?> part : Demographics.LAYOUT.commonParts()) {
            Optional.ofNullable(parts.get(part.key()))
                .flatMap(Outcome::ifFound)
                .ifPresent(datum -> write(json, part.code(), datum));
          }
        });
  }

  private static void write(Json json, Code code, Datum datum) {
    json.element(
        () -> {
          json.concept("code", code);
          datum.fold(new DatumWriter(json));
        });
  }

  /** Takes the setting. */
  Optional<Setting> setting() {
    return component(ExamCodes.SETTING)
        .flatMap(
            found -> Codings.oneOf(found, ValueType.CONCEPT.member(), ExaminationElements.SETTINGS))
        .map(Setting.class::cast);
  }

  /** Takes age and sex. */
  Demographics demographics() {
    Map<String, Outcome<Datum>> parts = new LinkedHashMap<>();
    for (Part<?, ?> part : Demographics.LAYOUT.commonParts()) {
      component(part.code())
          .flatMap(found -> part.spec().fold(new DatumReader(found)))
          .ifPresent(datum -> parts.put(part.key(), Outcome.found(datum)));
    }
    if (parts.isEmpty()) {
      return Demographics.UNKNOWN;
    }
    Result<Demographics> read =
        Demographics.LAYOUT.decode(new EncodedValue(Optional.empty(), Optional.empty(), parts));
    read.faults().forEach(fault -> panel.fault(fault.within(panel.path())));
    return read instanceof Result.Ok<Demographics> ok ? ok.value() : Demographics.UNKNOWN;
  }

  private Optional<ElementCursor> component(Code code) {
    Optional<ElementCursor> component = Optional.ofNullable(byCode.get(code.token()));
    component.ifPresent(found -> Codings.expect(found, "code", code));
    return component;
  }

  private void index(ElementCursor component) {
    String token =
        component.object("code").map(code -> code.objects("coding")).orElse(List.of()).stream()
            .map(coding -> coding.peek("system") + "|" + coding.peek("code"))
            .collect(Collectors.joining(", "));
    if (byCode.put(token, component) != null) {
      component.fault("code", "a second component " + token, "one component of each code");
    }
    if (!KNOWN.contains(token)) {
      component.fault("code", "\"" + token + "\"", "one of " + KNOWN);
    }
  }
}
