package org.isopter.mapper.v2;

import static java.nio.charset.StandardCharsets.ISO_8859_1;
import static java.nio.charset.StandardCharsets.UTF_8;

import java.nio.charset.Charset;
import java.util.Map;
import java.util.Optional;
import java.util.Set;

/** The header of a message (MSH), and whether results that can be read follow it. */
public final class V2Header {

  private static final int MARKS = 5;

  /** A header is no longer than this where nobody means harm. */
  private static final int LONGEST = 4096;

  private static final int TYPE = 9;
  private static final int CONTROL_ID = 10;
  private static final int PROCESSING = 11;
  private static final int VERSION = 12;
  private static final int ACCEPT = 15;
  private static final int CHARSET = 18;

  /** HL7 table 0211, of those in which a header looks the same; ASCII is UTF-8, too. */
  private static final Map<String, Charset> CHARSETS =
      Map.of(
          "", UTF_8,
          "ASCII", UTF_8,
          "UNICODE UTF-8", UTF_8,
          "8859/1", ISO_8859_1,
          "8859/2", Charset.forName("ISO-8859-2"),
          "8859/15", Charset.forName("ISO-8859-15"));

  /** HL7 table 0104. What is read of an OBX stands in the same fields in all of them. */
  private static final Set<String> VERSIONS =
      Set.of("2.3", "2.3.1", "2.4", "2.5", "2.5.1", "2.6", "2.7", "2.7.1", "2.8", "2.8.1", "2.8.2");

  private final V2Segment segment;

  private V2Header(V2Segment segment) {
    this.segment = segment;
  }

  /** Returns the header of a message; empty for what is none. */
  public static Optional<V2Header> of(byte[] message) {
    String head = new String(message, 0, Math.min(message.length, LONGEST), UTF_8);
    return ofText(head.replaceAll("^[\\uFEFF\\u000B\\s]+", ""));
  }

  /** Returns the header with which a text begins; empty where it begins with none. */
  static Optional<V2Header> ofText(String text) {
    String line = text.replaceAll("(?s)[\\r\\n].*", "");
    return line.matches("MSH[^\\w\\s].{4,}")
        ? Optional.of(new V2Header(V2Segment.of(line, line.substring(3, 3 + MARKS))))
        : Optional.empty();
  }

  /** Returns the characters that divide fields, components, repetitions, escape, subcomponents. */
  String marks() {
    return segment.marks();
  }

  /** Returns the offset of the time of the message; empty where it has none. */
  String offset() {
    return V2Values.offset(segment.raw(7));
  }

  /** Returns a component of a field, escapes resolved. */
  public String component(int field, int component) {
    return segment.component(segment.raw(field), component);
  }

  /** Returns the character set of the message; UTF-8 where none is named that is read. */
  Charset charset() {
    return CHARSETS.getOrDefault(segment.raw(CHARSET), UTF_8);
  }

  /** Returns what its sender knows the message by (MSH-10); may be empty. */
  public String controlId() {
    return component(CONTROL_ID, 1);
  }

  /** Says whether the sender asks to hear that the message is kept, rather than read (MSH-15). */
  public boolean asksForAcceptance() {
    return segment.raw(ACCEPT).equals("AL");
  }

  /** Returns why nothing below this header is read; empty where it may be. */
  public Optional<V2Fault> fault() {
    if (!component(TYPE, 1).equals("ORU")) {
      return fault(V2Fault.Code.MESSAGE_TYPE, TYPE, "results: ORU^R01");
    }
    if (!component(TYPE, 2).equals("R01")) {
      return fault(V2Fault.Code.EVENT, TYPE, "results: ORU^R01");
    }
    if (!component(PROCESSING, 1).equals("P")) {
      return fault(V2Fault.Code.PROCESSING, PROCESSING, "a message in use: P");
    }
    if (component(VERSION, 1).isEmpty()) {
      return fault(V2Fault.Code.MISSING, VERSION, "a version of HL7, as 2.5.1");
    }
    if (!VERSIONS.contains(component(VERSION, 1))) {
      return fault(V2Fault.Code.VERSION, VERSION, "a version from 2.3 to 2.8.2");
    }
    return CHARSETS.containsKey(segment.raw(CHARSET))
        ? Optional.empty()
        : fault(
            V2Fault.Code.TABLE_VALUE, CHARSET, "UNICODE UTF-8, 8859/1, 8859/2, 8859/15 or nothing");
  }

  private Optional<V2Fault> fault(V2Fault.Code code, int field, String wanted) {
    return Optional.of(new V2Fault(code, field, segment.raw(field), wanted));
  }
}
