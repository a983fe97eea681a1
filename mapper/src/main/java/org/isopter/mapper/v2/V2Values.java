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
    for (int i = 1; i <= 4; i += 3) {
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

  /** Returns a quantity in the unit of a field; a unit without a system is a text. */
  static Raw.Obj quantity(Raw.Leaf number, V2Segment segment, int unit) {
    Raw.Obj amount = object("value", number);
    Optional<String> field = segment.repetitions(unit).stream().findFirst();
    if (field.isEmpty()) {
      return amount;
    }
    String code = segment.component(field.get(), 1);
    Raw.Obj named = amount.with("unit", Raw.of(code));
    return segment.component(field.get(), 3).equals("UCUM")
        ? named.with("system", Raw.of("http://unitsofmeasure.org")).with("code", Raw.of(code))
        : named;
  }

  /** Returns the offset of a time; empty where it has none. */
  static String offset(String text) {
    return Hl7Time.version2(text).map(Hl7Time::offset).orElse("");
  }
}
