package org.isopter.model.wire;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.function.Function;

/**
 * The members of an Observation of which the description speaks, in the order of the standard.
 *
 * <p>Whatever is made from the description answers for each of them in a {@code switch} that is an
 * expression without a default, so that it does not compile while one is missing.
 *
 * <p>Source: FHIR R4, Observation, resource content.
 */
public enum ObservationMember {
  MODIFIER_EXTENSION("modifierExtension"),
  IDENTIFIER("identifier"),
  STATUS("status"),
  CATEGORY("category"),
  CODE("code"),
  SUBJECT("subject"),
  FOCUS("focus"),
  EFFECTIVE("effective[x]"),
  PERFORMER("performer"),
  VALUE("value[x]"),
  ABSENT_REASON("dataAbsentReason"),
  NOTE("note"),
  BODY_SITE("bodySite"),
  METHOD("method"),
  SPECIMEN("specimen"),
  DEVICE("device"),
  HAS_MEMBER("hasMember"),
  COMPONENT("component");

  private static final List<ObservationMember> ALL = List.copyOf(Arrays.asList(values()));

  private final String label;

  ObservationMember(String label) {
    this.label = label;
  }

  /** Returns the members, in the order of the standard. */
  public static List<ObservationMember> all() {
    return ALL;
  }

  /** Returns the name as the standard defines it, for instance {@code value[x]}. */
  public String label() {
    return label;
  }

  /** Returns the name with a type, for instance {@code effectiveDateTime}. */
  public String of(String type) {
    return path() + Character.toUpperCase(type.charAt(0)) + type.substring(1);
  }

  /** Returns the name as FHIRPath has it: without the type of a value that may have several. */
  public String path() {
    return label.replace("[x]", "");
  }

  /** Returns the members as elements. */
  static List<Element> elements(Function<ObservationMember, Element> make) {
    List<Element> elements = new ArrayList<>();
    ALL.forEach(member -> elements.add(make.apply(member)));
    return elements;
  }

  /** Returns an element of which nothing is said. */
  Element free() {
    return Element.of(label);
  }

  /** Returns an element that may not be there. */
  Element none() {
    return Element.none(label);
  }

  /** Returns an element that must be there once. */
  Element once() {
    return Element.once(label);
  }
}
