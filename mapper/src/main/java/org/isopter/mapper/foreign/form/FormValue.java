package org.isopter.mapper.foreign.form;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.regex.Pattern;
import org.isopter.mapper.foreign.vocabulary.Vocabulary;
import org.isopter.mapper.json.Raw;

/** An answer of a form of others as the value of an Observation. */
final class FormValue {

  private static final String UNIT = "http://hl7.org/fhir/StructureDefinition/questionnaire-unit";
  private static final String CONTROL =
      "http://hl7.org/fhir/StructureDefinition/questionnaire-itemControl";

  private static final Pattern NUMBER = Pattern.compile("-?(0|[1-9]\\d*)(\\.\\d+)?");

  private final Vocabulary vocabulary;
  private final Raw.Obj question;
  private final FormLabel label;

  FormValue(Vocabulary vocabulary, Raw.Obj question, FormLabel label) {
    this.vocabulary = vocabulary;
    this.question = question;
    this.label = label;
  }

  /** Says whether a line of text beside a question is only the unit of its answer. */
  static boolean isUnit(Raw.Obj display) {
    return display.objects("extension").stream()
        .filter(extension -> extension.string("url").equals(Optional.of(CONTROL)))
        .flatMap(extension -> extension.object("valueCodeableConcept").stream())
        .flatMap(concept -> concept.objects("coding").stream())
        .anyMatch(coding -> coding.string("code").equals(Optional.of("unit")));
  }

  /** Adds the members of an answer to those of an Observation or a component. */
  void addTo(Map<String, Raw> members, Raw.Obj answer) {
    for (Map.Entry<String, Raw> member : answer.members().entrySet()) {
      String name = member.getKey();
      switch (name) {
        case "item", "id", "extension", "modifierExtension" -> {
          // Items are answers of their own; extensions are put with those of the question.
        }
        case "valueInteger", "valueDecimal" -> number(members, name, member.getValue());
        case "valueString" -> text(members, member.getValue());
        case "valueCoding" -> members.put("valueCodeableConcept", concept(member.getValue()));
        case "valueQuantity" -> members.put(name, quantity(member.getValue()));
        case "valueDate" -> members.put("valueDateTime", member.getValue());
        default -> members.put(name, member.getValue());
      }
    }
  }

  /** A quantity in another unit than the question asks for contradicts itself. */
  private Raw quantity(Raw quantity) {
    Optional<String> asked = label.unit().flatMap(vocabulary.habits()::ucum);
    Optional<String> given = quantity.string("code").or(() -> quantity.string("unit"));
    boolean same = given.flatMap(vocabulary.habits()::ucum).equals(asked);
    if (asked.isEmpty() || given.isEmpty() || same || !(quantity instanceof Raw.Obj object)) {
      return quantity;
    }
    return quantity.string("code").isPresent()
        ? object.with("unit", Raw.of(asked.get()))
        : object.with("code", Raw.of(asked.get()));
  }

  private void number(Map<String, Raw> members, String name, Raw number) {
    Map<String, Raw> unit = unit();
    if (unit.isEmpty() && name.equals("valueInteger")) {
      members.put(name, number);
    } else {
      Map<String, Raw> quantity = new LinkedHashMap<>();
      quantity.put("value", number);
      quantity.putAll(unit);
      members.put("valueQuantity", new Raw.Obj(quantity));
    }
  }

  /** A form that asks for a number in a text has its unit beside the question too. */
  private void text(Map<String, Raw> members, Raw text) {
    String words = text instanceof Raw.Leaf leaf ? leaf.text().strip() : "";
    if (NUMBER.matcher(words).matches() && !unit().isEmpty()) {
      number(members, "valueDecimal", new Raw.Leaf(Raw.Kind.NUMBER, words));
    } else {
      members.put("valueString", text);
    }
  }

  /** The units of an extension, of a text beside the question and of its words may disagree. */
  private Map<String, Raw> unit() {
    Map<String, Raw> unit = new LinkedHashMap<>();
    for (Raw.Obj extension : question.objects("extension")) {
      if (extension.string("url").equals(Optional.of(UNIT))) {
        extension.object("valueCoding").ifPresent(coding -> coded(unit, coding));
      }
    }
    question.objects("item").stream()
        .filter(FormValue::isUnit)
        .flatMap(display -> display.string("text").stream())
        .findFirst()
        .or(label::unit)
        .ifPresent(spelling -> unit.put("unit", Raw.of(spelling)));
    return unit;
  }

  private static void coded(Map<String, Raw> unit, Raw.Obj coding) {
    coding.string("display").ifPresent(text -> unit.put("unit", Raw.of(text)));
    coding.get("system").ifPresent(system -> unit.put("system", system));
    coding.get("code").ifPresent(code -> unit.put("code", code));
  }

  /** What the form says of the choice stands beside what the answer says, for they may differ. */
  private Raw concept(Raw coding) {
    List<Raw.Obj> options =
        question.objects("answerOption").stream()
            .flatMap(option -> option.object("valueCoding").stream())
            .filter(option -> isSame(option, coding))
            .toList();
    Optional<String> own = coding.string("display");
    Optional<String> offered = options.stream().findFirst().flatMap(o -> o.string("display"));
    Map<String, Raw> concept = new LinkedHashMap<>();
    concept.put("coding", Raw.of(List.of(coding)));
    offered
        .filter(text -> !own.equals(Optional.of(text)))
        .ifPresent(text -> concept.put("text", Raw.of(text)));
    return new Raw.Obj(concept);
  }

  private static boolean isSame(Raw.Obj option, Raw coding) {
    return coding.string("code").isPresent()
        && option.string("code").equals(coding.string("code"))
        && option.string("system").equals(coding.string("system"));
  }
}
