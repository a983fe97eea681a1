package org.isopter.mapper.message;

import java.util.Optional;
import org.isopter.mapper.json.Raw;
import org.isopter.mapper.v2.V2Systems;

/** Puts the value of an observation or of a part, or why there is none, into an OBX. */
final class ResultValue {

  private static final int TYPE = 2;
  private static final int VALUE = 5;
  private static final int UNIT = 6;
  private static final int STATUS = 11;
  private static final String REASON = "dataAbsentReason";

  private final SegmentDraft draft;

  private ResultValue(SegmentDraft draft) {
    this.draft = draft;
  }

  static boolean isValue(String member) {
    return member.startsWith("value") || member.equals(REASON);
  }

  /** Puts a value; says whether a message has a form for it. */
  static boolean put(SegmentDraft draft, String member, Raw value) {
    return new ResultValue(draft).put(member, value).isPresent();
  }

  private Optional<SegmentDraft> put(String member, Raw value) {
    return switch (member) {
      case "valueQuantity" -> Optional.of(typed("NM", number(value)).put(UNIT, unit(value)));
      case "valueInteger" -> Optional.of(typed("NM", leaf(value)));
      case "valueString" -> Optional.of(text(leaf(value)));
      case "valueBoolean" -> Optional.of(typed("CWE", answer(leaf(value).equals("true"))));
      case "valueRatio" -> ratio(value);
      case "valueCodeableConcept" -> coded(value);
      case REASON -> coded(value).map(absent -> absent.put(STATUS, "X"));
      default -> Optional.empty();
    };
  }

  private SegmentDraft typed(String type, String text) {
    return draft.put(TYPE, type).put(VALUE, text);
  }

  /** Formatted text alone has lines. */
  private SegmentDraft text(String text) {
    return typed(text.contains("\n") ? "FT" : "ST", SegmentText.escaped(text));
  }

  private static String answer(boolean yes) {
    return (yes ? "Y^Yes^" : "N^No^") + V2Systems.YES_NO;
  }

  private Optional<SegmentDraft> coded(Raw value) {
    return SegmentText.coded((Raw.Obj) value).map(text -> typed("CWE", text));
  }

  /** Both numbers of a ratio have one unit, that of the field. */
  private Optional<SegmentDraft> ratio(Raw value) {
    Raw above = value.object("numerator").orElse(Raw.Obj.EMPTY);
    Raw below = value.object("denominator").orElse(Raw.Obj.EMPTY);
    return unit(above).equals(unit(below))
        ? Optional.of(
            typed("SN", "^" + number(above) + "^/^" + number(below)).put(UNIT, unit(above)))
        : Optional.empty();
  }

  private static String unit(Raw quantity) {
    return SegmentText.unit((Raw.Obj) quantity);
  }

  private static String number(Raw quantity) {
    return quantity.get("value").map(ResultValue::leaf).orElse("");
  }

  private static String leaf(Raw value) {
    return value instanceof Raw.Leaf leaf ? leaf.text() : "";
  }
}
