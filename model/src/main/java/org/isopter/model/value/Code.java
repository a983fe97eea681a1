package org.isopter.model.value;

import java.util.Objects;

/**
 * A code of a named system with the display that its release prints.
 *
 * @param system the absolute URI of the code system
 * @param code the code itself, never blank
 * @param display the name that the system gives to the code
 */
public record Code(String system, String code, String display) {

  /** Logical Observation Identifiers Names and Codes. */
  public static final String LOINC = "http://loinc.org";

  /** SNOMED Clinical Terms. */
  public static final String SNOMED = "http://snomed.info/sct";

  /** Unified Code for Units of Measure. */
  public static final String UCUM = "http://unitsofmeasure.org";

  public Code {
    Objects.requireNonNull(system);
    Objects.requireNonNull(display);
    if (code.isBlank()) {
      throw new IllegalArgumentException("a code of " + system + " is blank");
    }
  }

  /** Returns a LOINC code. */
  public static Code loinc(String code, String display) {
    return new Code(LOINC, code, display);
  }

  /** Returns a SNOMED CT code. */
  public static Code snomed(String code, String display) {
    return new Code(SNOMED, code, display);
  }

  /**
   * Returns a code of one of our own code systems.
   *
   * @param list the last part of the code system's canonical address, for instance {@code finding}
   */
  public static Code local(String list, String code, String display) {
    return new Code(Canonical.codeSystem(list), code, display);
  }

  /** Says whether this code belongs to one of our own code systems. */
  public boolean isLocal() {
    return system.startsWith(Canonical.BASE);
  }

  /** Says whether the other code names the same concept; displays are not compared. */
  public boolean sameAs(Code other) {
    return code.equals(other.code) && system.equals(other.system);
  }

  /** Returns {@code system|code}, the form that FHIR searches use. */
  public String token() {
    return system + "|" + code;
  }
}
