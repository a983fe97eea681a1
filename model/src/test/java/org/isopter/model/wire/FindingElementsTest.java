package org.isopter.model.wire;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.HashSet;
import java.util.List;
import java.util.Set;
import org.isopter.model.catalogue.Catalogue;
import org.isopter.model.catalogue.Pressures;
import org.isopter.model.catalogue.Pupils;
import org.isopter.model.finding.Finding;
import org.isopter.model.value.Code;
import org.isopter.model.value.Unit;

/** The description of the catalogue's findings as elements. */
class FindingElementsTest {

  @org.junit.jupiter.api.Test
  void namesEachRuleOnce() {
    Set<String> keys = new HashSet<>();
    for (Finding<?> finding : Catalogue.standard().all()) {
      for (Condition.Rule rule : FindingElements.of(finding).rules()) {
        assertTrue(keys.add(rule.key()), rule.key());
        assertTrue(rule.key().startsWith(finding.id() + "-"), rule.key());
      }
    }
  }

  @org.junit.jupiter.api.Test
  void listsTheCodesThatAFindingTravelsUnder() {
    for (Finding<?> finding : Catalogue.standard().all()) {
      List<Code> codes =
          slices(member(member(FindingElements.of(finding), "code"), "coding")).stream()
              .flatMap(slice -> slice.conditions(Condition.Pattern.class).stream())
              .map(pattern -> ((Fixed.OfCoding) pattern.fixed()).code())
              .toList();
      assertEquals(Set.copyOf(finding.codes().all()), Set.copyOf(codes), finding.id());
    }
  }

  @org.junit.jupiter.api.Test
  void allowsAPressureOnlyInItsUnit() {
    Element value = member(FindingElements.of(Pressures.INTRAOCULAR), "value[x]");
    assertEquals(
        List.of(
            new Condition.OneOfTypes(List.of("Quantity")),
            new Condition.Pattern(new Fixed.OfQuantity(Unit.MM_HG))),
        value.conditions());
    assertEquals(0, member(value, "comparator").max());
  }

  @org.junit.jupiter.api.Test
  void allowsNothingWhereAFindingHasNoTechnique() {
    Element form = FindingElements.of(Pupils.SIZE);
    assertEquals(Element.none("method"), member(form, "method"));
  }

  /**
   * FHIRPath: the normative release 2.0.0, sections 5.2 (where, all) and 6.1 to 6.5 (operators).
   */
  @org.junit.jupiter.api.Test
  void printsARuleAsFhirPath() {
    Condition.Rule range =
        FindingElements.of(Pressures.INTRAOCULAR).rules().stream()
            .filter(rule -> rule.key().equals("intraocular-pressure-value-range"))
            .findFirst()
            .orElseThrow();
    assertEquals(
        "value.ofType(Quantity).all(((system = 'http://unitsofmeasure.org' and"
            + " code = 'mm[Hg]') implies ((value >= 0) and (value <= 80))))",
        range.expression());
  }

  @org.junit.jupiter.api.Test
  void escapesWhatWouldEndAText() {
    assertEquals("code = '\\'\\'\\\\'", FhirPath.of(new Test.Is(ElementPath.of("code"), "''\\")));
  }

  @org.junit.jupiter.api.Test
  void refusesAKeyThatFhirWouldNotTake() {
    Test test = ElementPath.of("value").exists();
    assertThrows(
        IllegalArgumentException.class, () -> Condition.Rule.of("a key", "a sentence", test));
  }

  private static List<Element> slices(Element element) {
    return element.slicing().orElseThrow().slices();
  }

  private static Element member(Element element, String name) {
    return element.children().stream()
        .filter(child -> child.name().equals(name))
        .findFirst()
        .orElseThrow();
  }
}
