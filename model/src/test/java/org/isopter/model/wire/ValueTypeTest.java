package org.isopter.model.wire;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.EnumSet;
import java.util.Map;
import java.util.Random;
import java.util.Set;
import org.isopter.model.catalogue.Catalogue;
import org.isopter.model.exam.ExamSampler;
import org.isopter.model.finding.Datum;
import org.isopter.model.finding.EncodedValue;
import org.isopter.model.finding.Finding;
import org.isopter.model.finding.Layout;
import org.isopter.model.finding.Part;
import org.isopter.model.finding.Spec;
import org.isopter.model.finding.Variant;
import org.isopter.model.value.Outcome;

/** FHIR R4, data types: {@code Observation.value[x]} and the names of its members in JSON. */
class ValueTypeTest {

  @org.junit.jupiter.api.Test
  void namesTheMemberAsJsonDoes() {
    assertEquals("valueQuantity", ValueType.QUANTITY.member());
    assertEquals("valueInteger", ValueType.INTEGER.member());
    assertEquals("valueCodeableConcept", ValueType.CONCEPT.member());
    assertEquals("valueBoolean", ValueType.TRUTH.member());
    assertEquals("valueString", ValueType.TEXT.member());
    assertEquals("valueRatio", ValueType.RATIO.member());
    assertEquals("effectiveDateTime", ObservationMember.EFFECTIVE.of(BaseElements.TIME));
  }

  @org.junit.jupiter.api.Test
  void isTheSameOfASpecAndOfItsValues() {
    ExamSampler facts = new ExamSampler(Catalogue.standard().all(), new Random(3));
    Set<ValueType> seen = EnumSet.noneOf(ValueType.class);
    for (Finding<?> finding : Catalogue.standard().all()) {
      for (int i = 0; i < 30; i++) {
        facts.fact(finding).panel().ifPresent(panel -> compare(finding.layout(), panel, seen));
      }
    }
    // No finding of the catalogue has free text as its value.
    assertEquals(EnumSet.complementOf(EnumSet.of(ValueType.TEXT)), seen);
    assertEquals(ValueType.TEXT, ValueType.of(new Spec.Text(9)));
    assertEquals(ValueType.TEXT, ValueType.of(new Datum.Text("words")));
  }

  private static void compare(Layout<?> layout, EncodedValue panel, Set<ValueType> seen) {
    Variant variant = layout.variant(panel.notation()).orElseThrow();
    variant
        .value()
        .ifPresent(
            spec -> assertEquals(ValueType.of(spec), ValueType.of(panel.value().orElseThrow())));
    panel.value().map(ValueType::of).ifPresent(seen::add);
    for (Part<?, ?> part : variant.parts()) {
      found(panel.parts(), part.key(), ValueType.of(part.spec()), seen);
    }
  }

  private static void found(
      Map<String, Outcome<Datum>> parts, String key, ValueType wanted, Set<ValueType> seen) {
    Outcome<Datum> outcome = parts.get(key);
    if (outcome != null) {
      outcome
          .ifFound()
          .ifPresent(
              datum -> {
                assertEquals(wanted, ValueType.of(datum), key);
                seen.add(wanted);
              });
    }
  }
}
