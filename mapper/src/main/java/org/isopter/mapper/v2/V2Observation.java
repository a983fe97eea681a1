package org.isopter.mapper.v2;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.isopter.mapper.hl7.Hl7Number;
import org.isopter.mapper.json.Raw;

/**
 * One OBX segment, with the comments below it, as an observation of FHIR. What it says and FHIR has
 * no place for becomes a modifier extension, with which nobody takes the value.
 */
final class V2Observation {

  /** HL7 table 0085, by HL7's map; a result that is not there (X, N) is cancelled. */
  private static final Map<String, String> STATUS =
      Map.of(
          "F", "final",
          "U", "final",
          "P", "preliminary",
          "R", "preliminary",
          "S", "preliminary",
          "C", "corrected",
          "D", "entered-in-error",
          "W", "entered-in-error",
          "X", "cancelled",
          "N", "cancelled");

  private static final String DELETED = "\"\"";
  private static final int CODE = 3;
  private static final int VALUE = 5;
  private static final int UNIT = 6;
  private static final int FLAGS = 8;
  private static final int RESULT_STATUS = 11;
  private static final int ACCESS_CHECKS = 13;
  private static final int PERFORMED = 14;
  private static final int METHOD = 17;
  private static final int SITE = 20;

  private final V2Segment segment;
  private final Map<String, Raw> resource = new LinkedHashMap<>();
  private final List<Raw> unread = new ArrayList<>();
  private final List<Raw> notes = new ArrayList<>();

  V2Observation(V2Segment segment) {
    this.segment = segment;
  }

  /** Adds a comment. */
  void note(V2Segment comment) {
    notes.addAll(V2Order.note(comment));
  }

  /**
   * Returns the observation.
   *
   * @param subject whom the message is about
   * @param order what is said of all results of an order
   */
  Raw.Obj read(Optional<Raw.Obj> subject, V2Order order) {
    resource.put("resourceType", Raw.of("Observation"));
    Optional.ofNullable(STATUS.get(segment.raw(RESULT_STATUS)))
        .ifPresent(status -> resource.put("status", Raw.of(status)));
    concept(CODE, "code");
    subject.ifPresent(who -> resource.put("subject", who));
    order
        .time(segment.raw(PERFORMED))
        .ifPresent(time -> resource.put("effectiveDateTime", Raw.of(time)));
    value();
    V2Values.concept(segment, FLAGS)
        .ifPresent(flag -> resource.put("interpretation", Raw.of(List.of(flag))));
    concept(METHOD, "method");
    concept(SITE, "bodySite");
    if (segment.repetitions(FLAGS).size() > 1 || !segment.raw(ACCESS_CHECKS).isEmpty()) {
      unread("OBX");
    }
    if (!order.isPlain()) {
      unread("OBR");
    }
    notes.addAll(order.notes());
    put("note", notes);
    put("modifierExtension", unread);
    return new Raw.Obj(resource);
  }

  private void put(String name, List<Raw> all) {
    if (!all.isEmpty()) {
      resource.put(name, Raw.of(all));
    }
  }

  private void unread(String what) {
    unread.add(
        V2Values.object("url", Raw.of("urn:hl7-org:v2#" + what))
            .with("valueBoolean", new Raw.Leaf(Raw.Kind.TRUTH, "true")));
  }

  private void concept(int field, String name) {
    V2Values.concept(segment, field).ifPresent(concept -> resource.put(name, concept));
    if (segment.repetitions(field).size() > 1) {
      unread("OBX-" + field);
    }
  }

  private void value() {
    List<String> values = segment.repetitions(VALUE);
    if (values.isEmpty()) {
      return;
    }
    Optional<Map.Entry<String, Raw>> value =
        values.size() == 1 && !values.get(0).equals(DELETED)
            ? value(values.get(0))
            : Optional.empty();
    value.ifPresentOrElse(
        found -> resource.put(found.getKey(), found.getValue()), () -> unread("OBX-" + VALUE));
  }

  private Optional<Map.Entry<String, Raw>> value(String text) {
    return switch (segment.raw(2)) {
      case "NM" ->
          Hl7Number.of(text)
              .map(number -> Map.entry("valueQuantity", V2Values.quantity(number, segment, UNIT)));
      case "ST", "TX", "FT" -> Optional.of(Map.entry("valueString", withUnit(text)));
      case "CWE", "CE", "CNE", "CF" ->
          V2Values.concept(segment, VALUE)
              .map(concept -> Map.entry("valueCodeableConcept", concept));
      case "SN" -> structured(text);
      default -> Optional.empty();
    };
  }

  /** A unit beside a text belongs to it. */
  private Raw withUnit(String text) {
    String unit = segment.repetitions(UNIT).stream().findFirst().orElse("");
    String plain = segment.plain(text);
    String own = unit.isEmpty() ? "" : segment.component(unit, 1);
    return Raw.of(own.isEmpty() ? plain : plain + " " + own);
  }

  /** A fraction is a ratio, and a number with a sign before it is a quantity with a comparator. */
  private Optional<Map.Entry<String, Raw>> structured(String text) {
    String sign = segment.component(text, 1);
    String mark = segment.component(text, 3);
    Optional<Raw.Leaf> first = Hl7Number.of(segment.component(text, 2));
    Optional<Raw.Leaf> second = Hl7Number.of(segment.component(text, 4));
    if (first.isPresent() && second.isPresent() && sign.isEmpty() && mark.equals("/")) {
      Raw.Obj ratio =
          V2Values.object("numerator", V2Values.quantity(first.get(), segment, UNIT))
              .with("denominator", V2Values.quantity(second.get(), segment, UNIT));
      return Optional.of(Map.entry("valueRatio", ratio));
    }
    if (first.isEmpty() || second.isPresent() || !mark.isEmpty()) {
      return Optional.empty();
    }
    Raw.Obj amount = V2Values.quantity(first.get(), segment, UNIT);
    return switch (sign) {
      case "", "=" -> Optional.of(Map.entry("valueQuantity", amount));
      case "<", ">", "<=", ">=" ->
          Optional.of(Map.entry("valueQuantity", amount.with("comparator", Raw.of(sign))));
      default -> Optional.empty();
    };
  }
}
