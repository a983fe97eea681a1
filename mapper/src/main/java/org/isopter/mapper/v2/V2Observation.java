package org.isopter.mapper.v2;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.regex.Pattern;
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

  private static final int CODE = 3;
  private static final int SUB_ID = 4;
  private static final int VALUE = 5;
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
  private final List<Raw> parts = new ArrayList<>();

  V2Observation(V2Segment segment) {
    this.segment = segment;
  }

  /** Adds a comment. */
  void note(V2Segment comment) {
    notes.addAll(V2Order.note(comment));
  }

  /** Notes a segment below this one that only its sender knows: it may say anything of it. */
  void local() {
    unread("Z");
  }

  /**
   * Takes the result after this one as a part of it where its sub-id says so: 2.1 is a part of 2. A
   * part that says more than a code and a value keeps the whole from being taken.
   */
  boolean takes(V2Segment next) {
    String own = segment.raw(SUB_ID);
    String other = next.raw(SUB_ID);
    if (own.isEmpty() || !other.matches(Pattern.quote(own) + "\\.[0-9]+")) {
      return false;
    }
    Optional<Raw.Obj> part = new V2Part(segment, next).read();
    part.ifPresentOrElse(parts::add, () -> unread("OBX-" + SUB_ID));
    return part.isPresent();
  }

  /**
   * Returns the observation.
   *
   * @param subject whom the message is about
   * @param order what is said of all results of an order
   */
  Raw.Obj read(Optional<Raw.Obj> subject, V2Order order) {
    resource.put("resourceType", Raw.of("Observation"));
    boolean absent = new V2Value(segment).isReason();
    String status = absent ? order.status() : segment.raw(RESULT_STATUS);
    Optional.ofNullable(STATUS.get(status)).ifPresent(word -> resource.put("status", Raw.of(word)));
    concept(CODE, "code");
    subject.ifPresent(who -> resource.put("subject", who));
    order
        .time(segment.raw(PERFORMED))
        .ifPresent(time -> resource.put("effectiveDateTime", Raw.of(time)));
    value();
    segment.repetitions(FLAGS).stream()
        .findFirst()
        .map(flag -> V2Values.flag(segment, flag))
        .ifPresent(flag -> resource.put("interpretation", Raw.of(List.of(flag))));
    put("performer", new V2Witnesses(segment).performers());
    new V2Witnesses(segment).device().ifPresent(device -> resource.put("device", device));
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
    put("component", parts);
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
    if (segment.repetitions(VALUE).isEmpty()) {
      return;
    }
    new V2Value(segment)
        .read()
        .ifPresentOrElse(
            found -> resource.put(found.getKey(), found.getValue()), () -> unread("OBX-" + VALUE));
  }
}
