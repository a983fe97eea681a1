package org.isopter.mapper.cda;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.isopter.mapper.hl7.Hl7Number;
import org.isopter.mapper.hl7.Hl7Time;
import org.isopter.mapper.json.Raw;

/** The data types of HL7 version 3 as those of FHIR, their digits as they are. */
final class CdaValue {

  private static final Map<String, String> ABSENT =
      Map.of(
          "ASKU", "asked-unknown",
          "NASK", "not-asked",
          "NAV", "temp-unknown",
          "MSK", "masked",
          "NA", "not-applicable",
          "UNK", "unknown",
          "NI", "unknown");

  private CdaValue() {}

  /** Whether a value is high or low, as FHIR names the code system. */
  private static final Map<String, String> SYSTEMS =
      Map.of(
          "2.16.840.1.113883.5.83",
          "http://terminology.hl7.org/CodeSystem/v3-ObservationInterpretation");

  private static final String LATERALITY = "272741003";

  private static String oid(String root) {
    String known = SYSTEMS.getOrDefault(root, "");
    if (!known.isEmpty()) {
      return known;
    }
    return root.matches("[0-9.]+") ? "urn:oid:" + root : "urn:uuid:" + root;
  }

  /** Returns an id as an identifier. */
  static Raw.Obj identifier(CdaNode id) {
    String system = oid(id.attribute("root").orElse(""));
    return id.attribute("extension")
        .map(own -> object("system", Raw.of(system)).with("value", Raw.of(own)))
        .orElseGet(
            () -> object("system", Raw.of("urn:ietf:rfc:3986")).with("value", Raw.of(system)));
  }

  /** Returns a code as a coding. */
  static Optional<Raw.Obj> coding(CdaNode code) {
    return code.attribute("code")
        .map(
            text -> {
              Map<String, Raw> coding = new LinkedHashMap<>();
              code.attribute("codeSystem")
                  .ifPresent(root -> coding.put("system", Raw.of(oid(root))));
              coding.put("code", Raw.of(text));
              code.attribute("displayName")
                  .ifPresent(display -> coding.put("display", Raw.of(display)));
              return new Raw.Obj(coding);
            });
  }

  /** Returns a code and its translations as a concept; empty where there is no code at all. */
  static Optional<Raw.Obj> concept(CdaNode code) {
    List<Raw.Obj> codings = new ArrayList<>();
    coding(code).ifPresent(codings::add);
    code.all("translation").forEach(more -> coding(more).ifPresent(codings::add));
    return codings.isEmpty() ? Optional.empty() : Optional.of(object("coding", Raw.of(codings)));
  }

  /** Returns the side by which a body site is qualified, and by nothing else. */
  static Optional<Raw.Obj> side(CdaNode site) {
    List<CdaNode> qualifiers = site.all("qualifier");
    boolean one =
        qualifiers.size() == 1
            && qualifiers.get(0).all("name").size() == 1
            && qualifiers.get(0).all("value").size() == 1
            && qualifiers.get(0).all("name").get(0).has("code", LATERALITY)
            && !qualifiers.get(0).has("inverted", "true");
    return one ? coding(qualifiers.get(0).all("value").get(0)) : Optional.empty();
  }

  /** Returns a concept with one more coding. */
  static Raw.Obj with(Raw.Obj concept, Raw.Obj coding) {
    List<Raw> codings = new ArrayList<>(concept.list("coding"));
    codings.add(coding);
    return concept.with("coding", Raw.of(codings));
  }

  /** Returns a value under its name in FHIR; empty for what FHIR has no such value for. */
  static Optional<Map.Entry<String, Raw>> of(CdaNode value) {
    if (value.attribute("nullFlavor").isPresent()) {
      return absent(value);
    }
    return switch (value.type()) {
      case "ST" -> Optional.of(Map.entry("valueString", Raw.of(value.text())));
      case "CD", "CE", "CO", "CV" ->
          concept(value).map(concept -> Map.entry("valueCodeableConcept", concept));
      case "PQ" -> quantity(value);
      case "INT" ->
          number(value)
              .filter(leaf -> leaf.text().matches("-?\\d+"))
              .map(leaf -> Map.entry("valueInteger", leaf));
      case "REAL" -> number(value).map(leaf -> Map.entry("valueQuantity", object("value", leaf)));
      default -> Optional.empty();
    };
  }

  private static Optional<Map.Entry<String, Raw>> absent(CdaNode value) {
    return value
        .attribute("nullFlavor")
        .flatMap(flavor -> Optional.ofNullable(ABSENT.get(flavor)))
        .filter(reason -> value.children().isEmpty() && value.attribute("value").isEmpty())
        .map(
            reason ->
                object("system", Raw.of("http://terminology.hl7.org/CodeSystem/data-absent-reason"))
                    .with("code", Raw.of(reason)))
        .map(coding -> Map.entry("dataAbsentReason", object("coding", Raw.of(List.of(coding)))));
  }

  private static Optional<Map.Entry<String, Raw>> quantity(CdaNode value) {
    return number(value)
        .filter(any -> value.children().isEmpty())
        .map(
            leaf -> {
              Raw.Obj amount = object("value", leaf);
              Raw.Obj whole =
                  value
                      .attribute("unit")
                      .map(
                          unit ->
                              amount
                                  .with("unit", Raw.of(unit))
                                  .with("system", Raw.of("http://unitsofmeasure.org"))
                                  .with("code", Raw.of(unit)))
                      .orElse(amount);
              return Map.entry("valueQuantity", whole);
            });
  }

  private static Optional<Raw.Leaf> number(CdaNode value) {
    return value.attribute("value").flatMap(Hl7Number::of);
  }

  /** Returns a time as FHIR writes it: as exact as it is, and with the offset that it has. */
  static Optional<String> time(CdaNode time) {
    return time.attribute("value").flatMap(Hl7Time::version3).map(Hl7Time::text);
  }

  static Raw.Obj object(String name, Raw value) {
    return new Raw.Obj(Map.of(name, value));
  }
}
