package org.isopter.mapper.foreign;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNotEquals;

import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.isopter.mapper.foreign.reading.Options;
import org.isopter.mapper.foreign.vocabulary.ForeignRules;
import org.isopter.mapper.json.Raw;
import org.isopter.model.catalogue.Catalogue;
import org.junit.jupiter.api.DynamicTest;
import org.junit.jupiter.api.TestFactory;

/**
 * What stands beside a value and changes what it means: each case with its harmless opposite, which
 * differs in that one thing. The codes of labels, categories and interpretations are those of the
 * HL7 code systems v3-ObservationValue, observation-category and v3-ObservationInterpretation; what
 * the words mean is common practice, no source.
 */
class BesideAValueTest {

  private static final ForeignReader READER =
      new ForeignReader(Catalogue.standard(), Options.usual());

  @TestFactory
  Stream<DynamicTest> takesNoValueAsPlainBesideWhichSomethingChangesIt() {
    return cases()
        .map(
            row ->
                DynamicTest.dynamicTest(
                    name(row),
                    () -> {
                      assertEquals(text(row, "said"), said(row, "harmful"));
                      assertNotEquals(text(row, "taken"), said(row, "harmful"));
                    }));
  }

  @TestFactory
  Stream<DynamicTest> takesTheValueBesideItsHarmlessOpposite() {
    return cases()
        .map(
            row ->
                DynamicTest.dynamicTest(
                    name(row), () -> assertEquals(text(row, "taken"), said(row, "harmless"))));
  }

  @TestFactory
  Stream<DynamicTest> losesNothingOfIt() {
    return cases()
        .flatMap(row -> Stream.of(json(row, "harmful"), json(row, "harmless")))
        .map(json -> DynamicTest.dynamicTest(json, () -> Conservation.check(READER, json, json)));
  }

  private static String said(Raw row, String name) {
    return READER.read(json(row, name)).orThrow().resources().stream()
        .map(CarefulHumanTest::said)
        .collect(Collectors.joining(" || "));
  }

  private static String json(Raw row, String name) {
    return ForeignRules.whole(row.get(name).orElseThrow());
  }

  private static String name(Raw row) {
    return text(row, "case");
  }

  private static String text(Raw row, String name) {
    return row.string(name).orElseThrow();
  }

  private static Stream<Raw.Obj> cases() {
    return Stream.of(
            "beside-a-value",
            "other-shapes",
            "notes-beside-a-value",
            "around-a-value",
            "around-findings")
        .flatMap(Foreign::cases);
  }
}
