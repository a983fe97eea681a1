package org.isopter.mapper.v2;

import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import org.isopter.mapper.hl7.Hl7Number;
import org.isopter.mapper.json.Raw;

/**
 * The value of an OBX segment, as the member of FHIR that holds it.
 *
 * @param segment the segment
 */
record V2Value(V2Segment segment) {

  private static final Set<String> CODED = Set.of("CWE", "CE", "CNE", "CF");
  private static final String DELETED = "\"\"";
  private static final int TYPE = 2;
  private static final int VALUE = 5;
  private static final int UNIT = 6;
  private static final int RESULT_STATUS = 11;

  /** Returns the member and what it holds; empty for what is not understood whole. */
  Optional<Map.Entry<String, Raw>> read() {
    List<String> values = segment.repetitions(VALUE);
    boolean one =
        values.size() == 1
            && !values.get(0).equals(DELETED)
            && segment.repetitions(UNIT).size() <= 1
            && !(CODED.contains(segment.raw(TYPE)) && segment.isDivided(VALUE))
            && unit().isOne();
    return one ? of(values.get(0)) : Optional.empty();
  }

  /** Says whether the value is why there is none: the result is not there, and a code says why. */
  boolean isReason() {
    List<String> values = segment.repetitions(VALUE);
    return segment.raw(RESULT_STATUS).equals("X")
        && segment.raw(TYPE).equals("CWE")
        && values.size() == 1
        && V2Systems.isReason(segment.component(values.get(0), 3));
  }

  private Optional<Map.Entry<String, Raw>> of(String text) {
    return switch (segment.raw(TYPE)) {
      case "NM" ->
          Hl7Number.of(text)
              .map(number -> Map.entry("valueQuantity", V2Values.quantity(number, unit())));
      case "ST", "TX", "FT" ->
          Optional.of(text)
              .filter(any -> unit().isName(unit().name()))
              .map(any -> Map.entry("valueString", withUnit(any)));
      case "CWE", "CE", "CNE", "CF" -> concept(text);
      case "SN" -> structured(text);
      default -> Optional.empty();
    };
  }

  private Optional<Map.Entry<String, Raw>> concept(String text) {
    String code = segment.component(text, 1);
    boolean answer =
        segment.component(text, 3).equals(V2Systems.YES_NO)
            && List.of("Y", "N").contains(code)
            && segment.component(text, 4).isEmpty();
    if (answer) {
      Raw truth = new Raw.Leaf(Raw.Kind.TRUTH, String.valueOf(code.equals("Y")));
      return Optional.of(Map.entry("valueBoolean", truth));
    }
    String member = isReason() ? "dataAbsentReason" : "valueCodeableConcept";
    return V2Values.concept(segment, VALUE).map(concept -> Map.entry(member, concept));
  }

  private V2Unit unit() {
    return V2Unit.of(segment);
  }

  /** A unit beside a text belongs to it. */
  private Raw withUnit(String text) {
    String plain = segment.plain(text);
    String own = unit().code();
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
          V2Values.object("numerator", V2Values.quantity(first.get(), unit()))
              .with("denominator", V2Values.quantity(second.get(), unit()));
      return Optional.of(Map.entry("valueRatio", ratio));
    }
    if (first.isEmpty() || second.isPresent() || !mark.isEmpty()) {
      return Optional.empty();
    }
    Raw.Obj amount = V2Values.quantity(first.get(), unit());
    return switch (sign) {
      case "", "=" -> Optional.of(Map.entry("valueQuantity", amount));
      case "<", ">", "<=", ">=" ->
          Optional.of(Map.entry("valueQuantity", amount.with("comparator", Raw.of(sign))));
      default -> Optional.empty();
    };
  }
}
