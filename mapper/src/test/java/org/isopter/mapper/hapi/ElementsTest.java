package org.isopter.mapper.hapi;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeSet;
import java.util.stream.Stream;
import org.hl7.fhir.r4.model.Annotation;
import org.hl7.fhir.r4.model.Base;
import org.hl7.fhir.r4.model.CodeableConcept;
import org.hl7.fhir.r4.model.Coding;
import org.hl7.fhir.r4.model.Identifier;
import org.hl7.fhir.r4.model.Meta;
import org.hl7.fhir.r4.model.Observation;
import org.hl7.fhir.r4.model.Period;
import org.hl7.fhir.r4.model.Property;
import org.hl7.fhir.r4.model.Quantity;
import org.hl7.fhir.r4.model.Range;
import org.hl7.fhir.r4.model.Ratio;
import org.hl7.fhir.r4.model.Reference;
import org.isopter.mapper.foreign.document.Elements;
import org.isopter.mapper.json.Raw;
import org.junit.jupiter.api.DynamicTest;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.TestFactory;

/** The elements that an Observation may have are those of HAPI's model of R4, in their shapes. */
class ElementsTest {

  /** Which element of an Observation has which type; an index is the first item of a list. */
  private static final Map<String, Base> TYPES =
      Map.ofEntries(
          Map.entry("", new Observation()),
          Map.entry("component/0", new Observation.ObservationComponentComponent()),
          Map.entry("referenceRange/0", new Observation.ObservationReferenceRangeComponent()),
          Map.entry("code", new CodeableConcept()),
          Map.entry("category/0/coding/0", new Coding()),
          Map.entry("subject", new Reference()),
          Map.entry("identifier/0", new Identifier()),
          Map.entry("component/0/valueQuantity", new Quantity()),
          Map.entry("valueRange", new Range()),
          Map.entry("valueRatio", new Ratio()),
          Map.entry("effectivePeriod", new Period()),
          Map.entry("note/0", new Annotation()),
          Map.entry("meta", new Meta()));

  @TestFactory
  Stream<DynamicTest> hasTheElementsOfR4InTheirShapesAndNoOthers() {
    return TYPES.entrySet().stream()
        .map(type -> DynamicTest.dynamicTest("/" + type.getKey(), () -> check(type)));
  }

  private static void check(Map.Entry<String, Base> type) {
    Set<String> names = new TreeSet<>();
    for (Property property : type.getValue().children()) {
      for (Property member : members(property)) {
        names.add(member.getName());
        Raw one = isPrimitive(member.getTypeCode()) ? Raw.of("a") : Raw.Obj.EMPTY;
        Raw list = Raw.of(List.of(one));
        boolean many = member.getMaxCardinality() > 1;
        String at = type.getKey();
        assertEquals(Optional.empty(), other(at, member.getName(), many ? list : one));
        boolean open = member.getName().equals("effectiveTiming");
        if (!open && !member.getName().equals("valueSampledData")) {
          assertEquals(place(at, member), other(at, member.getName(), many ? one : list), at);
        }
      }
    }
    for (String name : everyName()) {
      boolean later = type.getKey().isEmpty() && name.equals("bodyStructure");
      if (!names.contains(name) && !later && !name.startsWith("modifierExtension")) {
        String place = "/" + (type.getKey().isEmpty() ? "" : type.getKey() + "/") + name;
        assertEquals(Optional.of(place), other(type.getKey(), name, Raw.of("a")));
      }
    }
  }

  @Test
  void saysWhereTheFirstIsThatIsNot() {
    Raw coding = new Raw.Obj(Map.of("code", Raw.of("a"), "negated", Raw.of("a")));
    Raw site = new Raw.Obj(Map.of("coding", Raw.of(List.of(Raw.Obj.EMPTY, coding))));
    Raw observation = new Raw.Obj(Map.of("bodySite", site));
    assertEquals(Optional.of("/bodySite/coding/1/negated"), Elements.firstOther(observation));
  }

  private static Optional<String> place(String at, Property member) {
    return Optional.of("/" + (at.isEmpty() ? "" : at + "/") + member.getName());
  }

  private static Optional<String> other(String at, String name, Raw value) {
    Raw inner = new Raw.Obj(Map.of(name, value));
    List<String> steps = at.isEmpty() ? List.of() : List.of(at.split("/", -1));
    for (int i = steps.size() - 1; i >= 0; i--) {
      boolean item = steps.get(i).equals("0");
      inner = item ? Raw.of(List.of(inner)) : new Raw.Obj(Map.of(steps.get(i), inner));
    }
    return Elements.firstOther(inner);
  }

  /** Names a choice by each of its types, as JSON does. */
  private static List<Property> members(Property property) {
    if (!property.getName().endsWith("[x]")) {
      return List.of(property);
    }
    List<Property> all = new ArrayList<>();
    String name = property.getName().replace("[x]", "");
    for (String type : property.getTypeCode().replaceAll("\\([^)]*\\)", "").split("\\|", -1)) {
      String ending = type.substring(0, 1).toUpperCase(Locale.ROOT) + type.substring(1);
      all.add(new Property(name + ending, type, "", 0, 1, List.of()));
    }
    return List.copyOf(all);
  }

  private static boolean isPrimitive(String type) {
    return !type.isEmpty() && Character.isLowerCase(type.charAt(0));
  }

  private static Set<String> everyName() {
    Set<String> names = new TreeSet<>(Set.of("comment", "comments", "related", "negated"));
    TYPES.values().stream()
        .flatMap(type -> type.children().stream())
        .flatMap(property -> members(property).stream())
        .forEach(property -> names.add(property.getName()));
    names.removeAll(Set.of("id", "extension"));
    return names;
  }
}
