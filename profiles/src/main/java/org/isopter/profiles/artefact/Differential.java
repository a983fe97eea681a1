package org.isopter.profiles.artefact;

import org.hl7.fhir.r4.model.CodeableConcept;
import org.hl7.fhir.r4.model.Coding;
import org.hl7.fhir.r4.model.ElementDefinition;
import org.hl7.fhir.r4.model.ElementDefinition.DiscriminatorType;
import org.hl7.fhir.r4.model.ElementDefinition.SlicingRules;
import org.hl7.fhir.r4.model.Enumerations.BindingStrength;
import org.hl7.fhir.r4.model.StructureDefinition;
import org.isopter.model.value.Canonical;
import org.isopter.model.value.Code;
import org.isopter.profiles.artefact.invariant.Invariant;

/** The elements in which a profile differs from what it derives from, in the order of FHIR. */
final class Differential {

  private final StructureDefinition profile;

  Differential(StructureDefinition profile) {
    this.profile = profile;
  }

  /**
   * Adds an element and returns it.
   *
   * @param id its id, for instance {@code Observation.component:chart.code}; the path and the name
   *     of the slice follow from it
   */
  ElementDefinition at(String id) {
    ElementDefinition element = profile.getDifferential().addElement();
    element.setId(id);
    element.setPath(id.replaceAll(":[^.]+", ""));
    int slice = id.lastIndexOf(':');
    if (slice > id.lastIndexOf('.')) {
      element.setSliceName(id.substring(slice + 1));
    }
    return element;
  }

  /** Adds an element that must be there once. */
  ElementDefinition once(String id) {
    return at(id).setMin(1).setMax("1");
  }

  /** Adds an element that may not be there. */
  void none(String id) {
    at(id).setMax("0");
  }

  /** Adds an element of which only the named slices may be there. */
  ElementDefinition sliced(String id, DiscriminatorType by, String path) {
    ElementDefinition element = at(id);
    element.getSlicing().setRules(SlicingRules.CLOSED).setOrdered(false);
    element.getSlicing().addDiscriminator().setType(by).setPath(path);
    return element;
  }

  /** Adds, below a concept that was added, the rule that it has one coding with system and code. */
  void oneCoding(String conceptId) {
    once(conceptId + ".coding");
    once(conceptId + ".coding.system");
    once(conceptId + ".coding.code");
  }

  /** Binds an element to one of our value sets. */
  static ElementDefinition bind(ElementDefinition element, String valueSet) {
    element
        .getBinding()
        .setStrength(BindingStrength.REQUIRED)
        .setValueSet(Canonical.valueSet(valueSet));
    return element;
  }

  /** Returns the pattern of a coding: its display is left to its code system. */
  static Coding coding(Code code) {
    return new Coding().setSystem(code.system()).setCode(code.code());
  }

  /** Returns the pattern of a concept. */
  static CodeableConcept concept(Code code) {
    return new CodeableConcept().addCoding(coding(code));
  }

  void state(ElementDefinition element, Iterable<Invariant> invariants) {
    invariants.forEach(
        invariant -> element.addConstraint(invariant.constraint().setSource(profile.getUrl())));
  }
}
