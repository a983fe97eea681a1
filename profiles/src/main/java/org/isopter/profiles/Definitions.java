package org.isopter.profiles;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.hl7.fhir.r4.model.CodeableConcept;
import org.hl7.fhir.r4.model.Coding;
import org.hl7.fhir.r4.model.ElementDefinition;
import org.hl7.fhir.r4.model.StructureDefinition;
import org.hl7.fhir.r4.model.Type;
import org.hl7.fhir.r4.model.ValueSet;
import org.isopter.model.wire.Condition;
import org.isopter.profiles.artefact.Artefacts;

/** What the profiles want, looked up by what a message names. */
final class Definitions {

  private final Map<String, StructureDefinition> profiles = new LinkedHashMap<>();
  private final Map<String, ValueSet> valueSets = new LinkedHashMap<>();
  private final Map<String, Condition.Rule> rules;

  Definitions(Artefacts artefacts) {
    rules = artefacts.rules();
    artefacts
        .resources()
        .forEach(
            resource -> {
              if (resource instanceof StructureDefinition profile) {
                profiles.put(profile.getUrl(), profile);
              } else if (resource instanceof ValueSet set) {
                valueSets.put(set.getUrl(), set);
              }
            });
  }

  /** Returns the rule of that key, if it is one of ours. */
  Optional<Condition.Rule> rule(String key) {
    return Optional.ofNullable(rules.get(key));
  }

  /** Returns the code of a slice. */
  String slice(String profile, String id) {
    return elements(profile)
        .filter(element -> id.equals(element.getId()))
        .map(element -> code(profile, element))
        .collect(Collectors.joining());
  }

  /** Returns the codes of a value set, in words; empty when it is not one of ours. */
  Optional<String> members(String valueSet) {
    return Optional.ofNullable(valueSets.get(valueSet)).map(Definitions::members);
  }

  /** Says whether one of our value sets lists a code, written as system, number sign and code. */
  boolean lists(String valueSet, String code) {
    ValueSet set = valueSets.get(valueSet);
    return set != null
        && set.getCompose().getInclude().stream()
            .flatMap(i -> i.getConcept().stream().map(c -> i.getSystem() + "#" + c.getCode()))
            .anyMatch(code::equals);
  }

  private static String members(ValueSet set) {
    return set.getCompose().getInclude().stream()
        .flatMap(include -> include.getConcept().stream())
        .map(concept -> concept.getCode() + " " + concept.getDisplay())
        .collect(Collectors.joining(", "));
  }

  private Stream<ElementDefinition> elements(String profile) {
    StructureDefinition definition = profiles.get(profile);
    return definition == null
        ? Stream.empty()
        : Stream.concat(
            definition.getDifferential().getElement().stream(),
            elements(definition.getBaseDefinition()));
  }

  private String code(String profile, ElementDefinition slice) {
    return slice.hasPattern()
        ? token(slice.getPattern())
        : elements(profile)
            .filter(element -> Objects.equals(element.getId(), slice.getId() + ".code"))
            .map(element -> token(element.getPattern()))
            .collect(Collectors.joining());
  }

  private static String token(Type pattern) {
    List<Coding> codings =
        pattern instanceof CodeableConcept concept
            ? concept.getCoding()
            : pattern instanceof Coding coding ? List.of(coding) : List.of();
    return codings.stream()
        .map(coding -> coding.getSystem() + "|" + coding.getCode())
        .collect(Collectors.joining(" + "));
  }
}
