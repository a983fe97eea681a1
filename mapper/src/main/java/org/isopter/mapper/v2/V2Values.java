package org.isopter.mapper.v2;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.isopter.mapper.hl7.Hl7Time;
import org.isopter.mapper.json.Raw;

/** The data types of HL7 version 2 as those of FHIR, by HL7's map from the one to the other. */
final class V2Values {

  /** Where the codings of a field begin (CWE, HL7 v2.7 and later: the third is at 10). */
  private static final List<Integer> CODINGS = List.of(1, 4, 10);

  private V2Values() {}

  static Raw.Obj object(String name, Raw value) {
    return new Raw.Obj(Map.of(name, value));
  }

  /** Returns a coded field as a concept: both codings, and the text of the one who wrote it. */
  static Optional<Raw.Obj> concept(V2Segment segment, int field) {
    return segment.repetitions(field).stream().findFirst().map(own -> concept(segment, own));
  }

  private static Raw.Obj concept(V2Segment segment, String field) {
    List<Raw.Obj> codings = new ArrayList<>();
    for (int i : CODINGS) {
      coding(
              segment.component(field, i),
              segment.component(field, i + 1),
              segment.component(field, i + 2))
          .ifPresent(codings::add);
    }
    String text = segment.component(field, 9);
    String said = text.isEmpty() && codings.isEmpty() ? segment.component(field, 2) : text;
    Map<String, Raw> concept = new LinkedHashMap<>();
    if (!codings.isEmpty()) {
      concept.put("coding", Raw.of(codings));
    }
    if (!said.isEmpty()) {
      concept.put("text", Raw.of(said));
    }
    return new Raw.Obj(concept);
  }

  private static Optional<Raw.Obj> coding(String code, String display, String system) {
    if (code.isEmpty()) {
      return Optional.empty();
    }
    Map<String, Raw> coding = new LinkedHashMap<>();
    if (!system.isEmpty()) {
      coding.put("system", Raw.of(V2Systems.address(system)));
    }
    coding.put("code", Raw.of(code));
    if (!display.isEmpty()) {
      coding.put("display", Raw.of(display));
    }
    return Optional.of(new Raw.Obj(coding));
  }

  /** Returns a flag (HL7 table 0078), which names no code system, as a concept. */
  static Raw.Obj flag(V2Segment segment, String field) {
    String code = segment.component(field, 1);
    boolean plain = segment.component(field, 3).isEmpty() && !code.isEmpty();
    return plain
        ? object(
            "coding",
            Raw.of(List.of(object("system", Raw.of(V2Systems.FLAGS)).with("code", Raw.of(code)))))
        : concept(segment, field);
  }

  /** Returns an id as an identifier; its system is the assigning authority, by URI or by name. */
  static Optional<Raw.Obj> identifier(V2Segment segment, String field) {
    String id = segment.component(field, 1);
    String authority = segment.component(field, 4);
    String uri = segment.part(field, 4, 3).equals("URI") ? segment.part(field, 4, 2) : "";
    Map<String, Raw> identifier = new LinkedHashMap<>();
    if (!uri.isEmpty()) {
      identifier.put("system", Raw.of(uri));
    } else if (!authority.isEmpty()) {
      identifier.put("system", Raw.of("urn:hl7-v2:" + authority.replaceAll("\\s", "-")));
    }
    identifier.put("value", Raw.of(id));
    return id.isEmpty() ? Optional.empty() : Optional.of(new Raw.Obj(identifier));
  }

  /**
   * Returns a quantity in a unit. A unit without a system is a text; the name beside a code of UCUM
   * goes with it, for the two may disagree.
   */
  static Raw.Obj quantity(Raw.Leaf number, V2Unit unit) {
    Raw.Obj amount = object("value", number);
    if (unit.code().isEmpty()) {
      return amount;
    }
    return unit.isUcum()
        ? amount
            .with("unit", Raw.of(unit.name().isEmpty() ? unit.code() : unit.name()))
            .with("system", Raw.of("http://unitsofmeasure.org"))
            .with("code", Raw.of(unit.code()))
        : amount.with("unit", Raw.of(unit.code()));
  }

  /** Returns the offset of a time; empty where it has none. */
  static String offset(String text) {
    return Hl7Time.version2(text).map(Hl7Time::offset).orElse("");
  }
}
