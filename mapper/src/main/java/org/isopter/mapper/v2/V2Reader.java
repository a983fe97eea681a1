package org.isopter.mapper.v2;

import static java.nio.charset.StandardCharsets.UTF_8;

import java.util.ArrayList;
import java.util.Base64;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import org.isopter.mapper.json.Raw;
import org.isopter.model.value.Fault;
import org.isopter.model.value.Result;

/**
 * Reads a message with results (HL7 v2, ORU^R01) as a bundle of FHIR observations: one for each OBX
 * segment, and the whole message beside them, so that nothing of it is lost.
 */
public final class V2Reader {

  private static final int MARKS = 5;
  private static final Set<String> CHARSETS = Set.of("", "ASCII", "UNICODE UTF-8");
  private static final String FRAME = "[\\u000B\\u001C]";

  private final List<Raw> entries = new ArrayList<>();
  private Optional<Raw.Obj> subject = Optional.empty();
  private V2Order order = V2Order.none();
  private String offset = "";
  private Optional<V2Observation> open = Optional.empty();

  private V2Reader() {}

  /** Says whether a document is a message, by how it begins. */
  public static boolean isV2(byte[] message) {
    String head = new String(message, 0, Math.min(message.length, 16), UTF_8);
    return head.replaceAll("^[\\uFEFF\\u000B\\s]+", "").matches("(?s)MSH[^\\w\\s].*");
  }

  /** Returns the bundle, or why the message cannot be read. */
  public static Result<Raw> read(byte[] message) {
    String text = new String(message, UTF_8).replaceAll(FRAME, "").replace("\uFEFF", "").strip();
    List<String> lines = List.of(text.split("[\\r\\n]+", -1));
    String header = lines.get(0);
    if (!header.matches("MSH[^\\w\\s].{4,}")
        || lines.stream().skip(1).anyMatch(l -> l.startsWith("MSH"))) {
      return refused("no message, or several", "one message in a file");
    }
    String marks = header.substring(3, 3 + MARKS);
    V2Segment first = V2Segment.of(header, marks);
    boolean results = first.raw(9).startsWith("ORU" + marks.charAt(1) + "R01");
    if (!results || !first.raw(11).startsWith("P")) {
      return refused(
          "a message of the type " + first.raw(9) + ", processing " + first.raw(11),
          "results in use: ORU^R01, processing P");
    }
    if (!CHARSETS.contains(first.raw(18)) || text.indexOf('\uFFFD') >= 0) {
      return refused("another character set than UTF-8", "a message in UTF-8");
    }
    V2Reader reader = new V2Reader();
    reader.offset = V2Values.offset(first.raw(7));
    reader.order = V2Order.none().in(reader.offset);
    lines.forEach(line -> reader.take(V2Segment.of(line, marks)));
    return Result.ok(reader.bundle(message));
  }

  private static Result<Raw> refused(String seen, String wanted) {
    return Result.refused(Fault.of("MSH", seen, wanted));
  }

  private void take(V2Segment segment) {
    switch (segment.name()) {
      case "NTE" ->
          open.ifPresentOrElse(
              observation -> observation.note(segment), () -> order = order.with(segment));
      case "OBX" -> {
        if (open.filter(observation -> observation.takes(segment)).isEmpty()) {
          close();
          open = Optional.of(new V2Observation(segment));
        }
      }
      case "PID" -> {
        close();
        order = V2Order.none().in(offset);
        subject =
            segment.repetitions(3).stream()
                .findFirst()
                .flatMap(id -> V2Values.identifier(segment, id))
                .map(id -> V2Values.object("identifier", id));
      }
      case "OBR" -> {
        close();
        order = V2Order.of(segment).in(offset);
      }
      case "SPM" -> {
        close();
        order = order.touched();
      }
      default -> close();
    }
  }

  private void close() {
    open.ifPresent(observation -> add(observation.read(subject, order)));
    open = Optional.empty();
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
