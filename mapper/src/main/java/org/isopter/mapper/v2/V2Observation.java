package org.isopter.mapper.v2;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.regex.Pattern;
import java.util.stream.IntStream;
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
  private static final int RANGE = 7;
  private static final int PERFORMED = 14;
  private static final int METHOD = 17;
  private static final int SITE = 20;

  private static final String DELETED = "\"\"";

  /** What is read, and what says nothing of a value: identifiers, times of analysis, a director. */
  private static final Set<Integer> KNOWN =
      Set.of(
          1,
          2,
          CODE,
          SUB_ID,
          VALUE,
          6,
          RANGE,
          FLAGS,
          10,
          RESULT_STATUS,
          12,
          PERFORMED,
          15,
          16,
          METHOD,
          18,
          19,
          SITE,
          21,
          23,
          24,
          25);

  /** HL7 tables 0725 (mood: an event) and 0936 (type: a result). */
  private static final Map<Integer, String> USUAL = Map.of(22, "EVN", 29, "RSLT");

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
    notes.addAll(V2Said.note(comment));
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
    time(order);
    value();
    segment.repetitions(FLAGS).stream()
        .findFirst()
        .map(flag -> V2Values.flag(segment, flag))
        .ifPresent(flag -> resource.put("interpretation", Raw.of(List.of(flag))));
    put("performer", new V2Witnesses(segment).performers());
    new V2Witnesses(segment).device().ifPresent(device -> resource.put("device", device));
    concept(METHOD, "method");
    concept(SITE, "bodySite");
    range();
    if (segment.repetitions(FLAGS).size() > 1 || !isOfKnownFields()) {
      unread("OBX");
    }
    if (!order.said().isPlain()) {
      unread("OBR");
    }
    notes.addAll(order.said().notes());
    put("note", notes);
    put("component", parts);
    put("modifierExtension", unread);
    return new Raw.Obj(resource);
  }

  /** An order may be of a time that lasts; a result that has its own is of that. */
  private void time(V2Order order) {
    String own = segment.raw(PERFORMED);
    Optional<String> end = own.isEmpty() ? order.end() : Optional.empty();
    Optional<Raw> start = order.time(own).map(Raw::of);
    if (end.isEmpty()) {
      start.ifPresent(time -> resource.put("effectiveDateTime", time));
    } else if (start.isPresent()) {
      Raw.Obj period = V2Values.object("start", start.get()).with("end", Raw.of(end.get()));
      resource.put("effectivePeriod", period);
    }
    if (order.isBeforeBirth(own)) {
      unread("PID-7");
    }
  }

  private void range() {
    String range = segment.plain(segment.raw(RANGE));
    if (!range.isEmpty()) {
      resource.put("referenceRange", Raw.of(List.of(V2Values.object("text", Raw.of(range)))));
    }
  }

  /** A probability, an intent, or who may see it, are none of a result that was simply found. */
  private boolean isOfKnownFields() {
    return IntStream.range(1, segment.fields().size())
        .filter(field -> !KNOWN.contains(field))
        .allMatch(
            field ->
                segment.raw(field).isEmpty()
                    || segment.raw(field).equals(USUAL.getOrDefault(field, "")));
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
    if (field != CODE && segment.raw(field).equals(DELETED)) {
      return;
    }
    V2Values.concept(segment, field).ifPresent(concept -> resource.put(name, concept));
    if (segment.repetitions(field).size() > 1 || segment.isDivided(field)) {
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
