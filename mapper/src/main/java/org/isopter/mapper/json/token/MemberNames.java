package org.isopter.mapper.json.token;

import static java.nio.charset.StandardCharsets.US_ASCII;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.HashMap;
import java.util.List;
import java.util.Map;

/**
 * The names of the members of one document as small numbers, so that a member is found by comparing
 * numbers. What FHIR calls the members of our own form has the same number in every document; a
 * name that is missing there is only found more slowly.
 */
final class MemberNames {

  private static final String[] USUAL = {
    "agent",
    "author",
    "bodySite",
    "category",
    "code",
    "coding",
    "component",
    "dataAbsentReason",
    "date",
    "denominator",
    "derivedFrom",
    "device",
    "display",
    "div",
    "effectiveDateTime",
    "end",
    "entity",
    "entry",
    "extension",
    "fullUrl",
    "hasMember",
    "id",
    "identifier",
    "ifMatch",
    "ifModifiedSince",
    "ifNoneExist",
    "ifNoneMatch",
    "issued",
    "lastUpdated",
    "link",
    "location",
    "meta",
    "method",
    "mode",
    "modifierExtension",
    "name",
    "note",
    "numerator",
    "outcome",
    "performer",
    "period",
    "profile",
    "recorded",
    "reference",
    "relation",
    "request",
    "resource",
    "resourceType",
    "response",
    "result",
    "role",
    "score",
    "search",
    "section",
    "security",
    "source",
    "start",
    "status",
    "subject",
    "system",
    "tag",
    "target",
    "text",
    "timestamp",
    "title",
    "total",
    "type",
    "unit",
    "url",
    "value",
    "valueBoolean",
    "valueCodeableConcept",
    "valueInteger",
    "valueQuantity",
    "valueRatio",
    "valueReference",
    "valueString",
    "version",
    "versionId",
    "what",
    "who"
  };

  /** How many names have the same number in every document; they fit a set of 128 bits. */
  static final int COMMON = USUAL.length;

  private static final int SLOTS = 1024;
  private static final byte[] BY_TEXT = slots();
  private static final byte[] BY_BYTES = slots();
  private static final byte[][] BYTES = new byte[COMMON][];
  private static final long[] STARTS = new long[COMMON];

  static {
    for (int i = 0; i < COMMON; i++) {
      BYTES[i] = USUAL[i].getBytes(US_ASCII);
      STARTS[i] = EightBytes.start(BYTES[i], 0, BYTES[i].length);
      put(BY_TEXT, USUAL[i].hashCode(), i);
      put(BY_BYTES, hash(STARTS[i], BYTES[i].length), i);
    }
  }

  private final Map<String, Integer> others = new HashMap<>();
  private final List<String> texts = new ArrayList<>();

  /** Returns the number of a name that stands in a document; a new one is given where needed. */
  int add(String name) {
    int common = common(name);
    if (common >= 0) {
      return common;
    }
    Integer other = others.putIfAbsent(name, COMMON + texts.size());
    if (other != null) {
      return other;
    }
    texts.add(name);
    return COMMON + texts.size() - 1;
  }

  /** Returns the number of a name; -1 where the document has no such name. */
  int number(String name) {
    int common = common(name);
    return common >= 0 ? common : others.getOrDefault(name, -1);
  }

  /** Returns the name of a number. */
  String text(int number) {
    return number < COMMON ? USUAL[number] : texts.get(number - COMMON);
  }

  private static int common(String name) {
    for (int slot = name.hashCode() & (SLOTS - 1); BY_TEXT[slot] >= 0; slot = after(slot)) {
      if (USUAL[BY_TEXT[slot]].equals(name)) {
        return BY_TEXT[slot];
      }
    }
    return -1;
  }

  /**
   * Returns the number of a usual name in ASCII; -1 where it is another.
   *
   * @param start its first eight bytes, as {@link EightBytes#start} gives them
   */
  static int common(byte[] json, int from, int to, long start) {
    int length = to - from;
    for (int slot = hash(start, length); BY_BYTES[slot] >= 0; slot = after(slot)) {
      int number = BY_BYTES[slot];
      if (STARTS[number] == start
          && BYTES[number].length == length
          && (length <= Long.BYTES || Arrays.equals(json, from, to, BYTES[number], 0, length))) {
        return number;
      }
    }
    return -1;
  }

  private static int hash(long start, int length) {
    return (int) ((start * 0x9E3779B97F4A7C15L + length * 0xC2B2AE3D27D4EB4FL) >>> 54);
  }

  private static byte[] slots() {
    byte[] slots = new byte[SLOTS];
    Arrays.fill(slots, (byte) -1);
    return slots;
  }

  private static void put(byte[] slots, int hash, int number) {
    int slot = hash & (SLOTS - 1);
    while (slots[slot] >= 0) {
      slot = after(slot);
    }
    slots[slot] = (byte) number;
  }

  private static int after(int slot) {
    return (slot + 1) & (SLOTS - 1);
  }
}
