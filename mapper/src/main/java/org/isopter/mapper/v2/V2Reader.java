package org.isopter.mapper.v2;

import static java.nio.charset.StandardCharsets.UTF_8;

import java.nio.charset.Charset;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.Base64;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.isopter.mapper.json.Raw;
import org.isopter.model.value.Fault;
import org.isopter.model.value.Result;

/**
 * Reads a message with results (HL7 v2, ORU^R01) as a bundle of FHIR observations: one for each OBX
 * segment, and the whole message beside them, so that nothing of it is lost.
 */
public final class V2Reader {

  /** Somebody or something that took part (v2.7 and later), in whatever way. */
  private static final String PARTICIPATION = "PRT";

  /** The rest of a segment, or of the message, stands elsewhere (HL7 v2.5.1, section 2.10.2). */
  private static final Set<String> GOES_ON = Set.of("ADD", "DSC");

  private static final int CONTINUES = 14;
  private static final int ORDER_OF_PLACER = 2;
  private static final int ORDER_OF_FILLER = 3;
  private static final int SUB_ID = 4;

  private static final String FRAME = "[\\u000B\\u001C]";

  private final List<Raw> entries = new ArrayList<>();
  private Optional<Raw.Obj> subject = Optional.empty();
  private final V2Header header;
  private final V2Clock clock;
  private final V2Before before = new V2Before();
  private V2Order order;
  private boolean started;
  private Optional<V2Observation> open = Optional.empty();
  private boolean orders;
  private boolean groups;
  private String orderName = "";
  private String subId = "";

  private V2Reader(V2Header header, Optional<ZoneId> zone) {
    this.header = header;
    this.clock = new V2Clock(header.offset(), zone);
    this.order = V2Order.none(V2Said.NOTHING, clock);
  }

  /** Says whether a document is a message, by how it begins. */
  public static boolean isV2(byte[] message) {
    if (message.length > 0 && message[0] == '{') {
      return false;
    }
    String head = new String(message, 0, Math.min(message.length, 16), UTF_8);
    return head.replaceAll("^[\\uFEFF\\u000B\\s]+", "").matches("(?s)MSH[^\\w\\s].*");
  }

  /** Returns the bundle, or why the message cannot be read; times as the message has them. */
  public static Result<Raw> read(byte[] message) {
    return read(message, Optional.empty());
  }

  /**
   * Returns the bundle, or why the message cannot be read.
   *
   * @param zone the time zone of times without an offset, where the message has none either
   */
  public static Result<Raw> read(byte[] message, Optional<ZoneId> zone) {
    Optional<V2Header> header = V2Header.ofText(text(message, UTF_8));
    if (header.isEmpty()) {
      return refused("MSH", "no message", "a message of HL7 version 2");
    }
    Optional<V2Fault> fault = header.flatMap(V2Header::fault);
    if (fault.isPresent()) {
      return refused("MSH-" + fault.get().field(), shown(fault.get().seen()), fault.get().wanted());
    }
    String text = text(message, header.get().charset());
    return new V2Reader(header.get(), zone).read(text, message);
  }

  private static String text(byte[] message, Charset charset) {
    return new String(message, charset).replaceAll(FRAME, "").replace("\uFEFF", "").strip();
  }

  private static String shown(String field) {
    return field.isEmpty() ? "nothing" : field;
  }

  private Result<Raw> read(String text, byte[] message) {
    if (text.indexOf('\uFFFD') >= 0) {
      return refused(
          "MSH-18", "another character set than it says", "a message in the one of MSH-18");
    }
    List<String> lines = List.of(text.split("[\\r\\n]+", -1));
    if (lines.stream().skip(1).anyMatch(line -> line.startsWith("MSH"))) {
      return refused("MSH", "several messages", "one message in a file");
    }
    List<V2Segment> segments =
        lines.stream().map(line -> V2Segment.of(line, header.marks())).toList();
    // The rest of a text that was divided by a line's end may say anything of the value before it.
    if (!segments.stream().allMatch(segment -> segment.name().matches("[A-Z][A-Z0-9]{2}"))) {
      return refused("message", "a line that begins no segment", "segments alone");
    }
    boolean parts = segments.stream().anyMatch(segment -> GOES_ON.contains(segment.name()));
    if (parts || !segments.get(0).raw(CONTINUES).isEmpty()) {
      return refused("message", "a part of a message (ADD, DSC, MSH-14)", "a whole message");
    }
    divide(segments);
    segments.forEach(this::take);
    return Result.ok(bundle(message));
  }

  private static Result<Raw> refused(String where, String seen, String wanted) {
    return Result.refused(Fault.of(where, seen, wanted));
  }

  private void take(V2Segment segment) {
    switch (segment.name()) {
      case "NTE" ->
          open.ifPresentOrElse(observation -> observation.note(segment), () -> comment(segment));
      case "OBX" -> {
        if (open.filter(observation -> observation.takes(segment)).isEmpty()) {
          close();
          open = Optional.of(new V2Observation(segment));
          subId = segment.raw(SUB_ID);
        }
      }
      case "PID" -> {
        close();
        before.person(segment);
        start();
        subject =
            segment.repetitions(3).stream()
                .findFirst()
                .flatMap(id -> V2Values.identifier(segment, id))
                .map(id -> V2Values.object("identifier", id));
      }
      case "ORC" -> {
        close();
        before.order(segment);
        start();
      }
      case "OBR" -> {
        close();
        order = V2Order.of(segment, before.said(), clock);
        started = true;
        orderName =
            Stream.of(1, ORDER_OF_PLACER, ORDER_OF_FILLER)
                .map(segment::raw)
                .collect(Collectors.joining(" "))
                .strip();
      }
      case "SPM" -> {
        close();
        order = order.saying(order.said().and(false));
      }
      default -> {
        if (segment.name().startsWith("Z") || segment.name().equals(PARTICIPATION)) {
          local();
        }
      }
    }
  }

  /** Before an order a segment of the sender's own is about the message; below it, of results. */
  private void local() {
    if (open.isPresent()) {
      open.get().local();
    } else if (started) {
      order = order.saying(order.said().and(false));
    }
  }

  /** Results without an OBR stand below the person alone. */
  private void start() {
    order = V2Order.none(before.said(), clock);
    started = false;
  }

  private void comment(V2Segment segment) {
    if (started) {
      order = order.saying(order.said().with(segment));
    } else {
      before.comment(segment);
      start();
    }
  }

  private void close() {
    open.ifPresent(observation -> add(ordered(observation.read(subject, order))));
    open = Optional.empty();
  }

  /**
   * Several orders, or groups of results with one sub-id, tell measurements apart: their parts are
   * put together only where they have both in common.
   */
  private void divide(List<V2Segment> segments) {
    orders = segments.stream().filter(segment -> segment.name().equals("OBR")).count() > 1;
    List<String> ids =
        segments.stream()
            .filter(segment -> segment.name().equals("OBX"))
            .map(segment -> segment.raw(SUB_ID))
            .filter(id -> !id.isEmpty() && id.indexOf('.') < 0)
            .toList();
    long different = ids.stream().distinct().count();
    groups = different > 1 && different < ids.size();
  }

  private Raw.Obj ordered(Raw.Obj resource) {
    List<String> names = new ArrayList<>();
    if (orders) {
      names.add(orderName);
    }
    if (groups) {
      names.add(subId);
    }
    String name = String.join(" ", names).strip();
    return name.isEmpty()
        ? resource
        : resource.with(
            "basedOn",
            Raw.of(
                List.of(
                    V2Values.object(
                        "identifier",
                        V2Values.object("system", Raw.of("urn:hl7-org:v2#OBR"))
                            .with("value", Raw.of(name))))));
  }

  private void add(Raw.Obj resource) {
    entries.add(V2Values.object("resource", resource));
  }

  private Raw bundle(byte[] message) {
    close();
    Map<String, Raw> whole = new LinkedHashMap<>();
    whole.put("resourceType", Raw.of("Binary"));
    whole.put("contentType", Raw.of("x-application/hl7-v2+er7"));
    whole.put("data", Raw.of(Base64.getEncoder().encodeToString(message)));
    add(new Raw.Obj(whole));
    Map<String, Raw> bundle = new LinkedHashMap<>();
    bundle.put("resourceType", Raw.of("Bundle"));
    bundle.put("type", Raw.of("collection"));
    bundle.put("entry", Raw.of(entries));
    return new Raw.Obj(bundle);
  }
}
