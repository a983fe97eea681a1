package org.isopter.profiles.artefact;

import org.hl7.fhir.r4.model.ElementDefinition;
import org.hl7.fhir.r4.model.ElementDefinition.DiscriminatorType;
import org.hl7.fhir.r4.model.ElementDefinition.SlicingRules;
import org.hl7.fhir.r4.model.StructureDefinition;
import org.isopter.model.wire.Element;
import org.isopter.model.wire.Slicing;

/** The elements in which a profile differs from what it derives from, in the order of FHIR. */
final class Differential {

  private final StructureDefinition profile;

  Differential(StructureDefinition profile) {
    this.profile = profile;
  }

  /** Adds a resource with all below it. */
  void add(Element root) {
    state(root.name(), root);
  }

  private void state(String id, Element element) {
    if (element.isStated()) {
      state(at(id), element);
    }
    element.children().forEach(child -> state(id + "." + child.name(), child));
    element.slicing().ifPresent(how -> how.slices().forEach(s -> state(id + ":" + s.name(), s)));
  }

  private void state(ElementDefinition definition, Element element) {
    if (element.min() != Element.AS_BASE) {
      definition.setMin(element.min());
    }
    if (element.max() != Element.AS_BASE) {
      definition.setMax(Integer.toString(element.max()));
    }
    if (element.supported()) {
      definition.setMustSupport(true);
    }
    element.slicing().ifPresent(how -> slice(definition, how));
    StatedConditions conditions = new StatedConditions(definition, profile.getUrl());
    element.conditions().forEach(condition -> condition.fold(conditions));
  }

  private static void slice(ElementDefinition definition, Slicing how) {
    definition
        .getSlicing()
        .setRules(how.closed() ? SlicingRules.CLOSED : SlicingRules.OPEN)
        .setOrdered(false)
        .addDiscriminator()
        .setType(how.by() == Slicing.By.TYPE ? DiscriminatorType.TYPE : DiscriminatorType.PATTERN)
        .setPath(how.by() == Slicing.By.CODE ? "code" : "$this");
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
}
