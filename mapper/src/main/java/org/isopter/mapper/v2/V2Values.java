package org.isopter.mapper.v2;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.isopter.mapper.json.Raw;

/** The data types of HL7 version 2 as those of FHIR, by HL7's map from the one to the other. */
final class V2Values {

  private static final Pattern NUMBER = Pattern.compile("\\+?(-?)0*(\\d+(?:\\.\\d+)?)");
  private static final Pattern TIME =
      Pattern.compile(
          "(\\d{4})(?:(\\d{2})(?:(\\d{2})(?:(\\d{2})(\\d{2})(\\d{2})?(\\.\\d+)?)?)?)?([+-]\\d{4})?");

  /** Names of code systems (HL7 table 0396). */
  private static final Map<String, String> SYSTEMS =
      Map.of(
          "LN", "http://loinc.org",
          "SCT", "http://snomed.info/sct",
          "UCUM", "http://unitsofmeasure.org",
          "NULLFL", "http://terminology.hl7.org/CodeSystem/v3-NullFlavor");

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
      coding.put(
          "system",
          Raw.of(SYSTEMS.getOrDefault(system, "urn:hl7-v2:" + system.replaceAll("\\s", "-"))));
    }
    coding.put("code", Raw.of(code));
    if (!display.isEmpty()) {
      coding.put("display", Raw.of(display));
    }
    return Optional.of(new Raw.Obj(coding));
  }

  /** Returns an id as an identifier; its system is the assigning authority. */
  static Optional<Raw.Obj> identifier(V2Segment segment, String field) {
    String id = segment.component(field, 1);
    String authority = segment.component(field, 4);
    Map<String, Raw> identifier = new LinkedHashMap<>();
    if (!authority.isEmpty()) {
      identifier.put("system", Raw.of("urn:hl7-v2:" + authority.replaceAll("\\s", "-")));
    }
    identifier.put("value", Raw.of(id));
    return id.isEmpty() ? Optional.empty() : Optional.of(new Raw.Obj(identifier));
  }

  /** Returns a number with the digits that it has. */
  static Optional<Raw.Leaf> number(String text) {
    return Optional.of(NUMBER.matcher(text))
        .filter(Matcher::matches)
        .map(number -> new Raw.Leaf(Raw.Kind.NUMBER, number.group(1) + number.group(2)));
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
    Matcher parts = TIME.matcher(text);
    return parts.matches() && parts.group(8) != null ? parts.group(8) : "";
  }

  /**
   * Returns a time with its offset, or else with that of the message, as the standard says; without
   * either, the day.
   */
  static Optional<String> time(String text, String usual) {
    Matcher parts = TIME.matcher(text);
    if (!parts.matches()) {
      return Optional.empty();
    }
    StringBuilder time = new StringBuilder(parts.group(1));
    for (int i = 2; i <= 3 && parts.group(i) != null; i++) {
      time.append('-').append(parts.group(i));
    }
    String own = offset(text);
    String offset = own.isEmpty() ? usual : own;
    if (parts.group(4) != null && !offset.isEmpty()) {
      String seconds = parts.group(6) == null ? "00" : parts.group(6);
      time.append('T').append(parts.group(4)).append(':').append(parts.group(5));
      time.append(':').append(seconds).append(parts.group(7) == null ? "" : parts.group(7));
      time.append(offset, 0, 3).append(':').append(offset, 3, 5);
    }
    return Optional.of(time.toString());
  }
}
