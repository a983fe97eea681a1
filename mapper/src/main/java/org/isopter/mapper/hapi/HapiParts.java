package org.isopter.mapper.hapi;

import org.isopter.model.value.Fault;
import org.isopter.model.value.FaultException;

/**
 * The libraries of HAPI FHIR that reading XML or another release needs. Reading and writing R4 JSON
 * needs none, so whoever does only that need not carry them.
 */
public enum HapiParts {
  /** XML of R4. */
  XML("XML", "org.hl7.fhir.r4.model.Bundle", "hapi-fhir-structures-r4"),
  /** JSON or XML of R4B. */
  R4B("FHIR R4B", "org.hl7.fhir.r4b.model.Bundle", "hapi-fhir-structures-r4b"),
  /** JSON or XML of R5. */
  R5("FHIR R5", "org.hl7.fhir.r5.model.Bundle", "hapi-fhir-structures-r5"),
  /** The way from R4B or R5 to R4. */
  CONVERTER(
      "another release than FHIR R4",
      "org.hl7.fhir.convertors.factory.VersionConvertorFactory_40_50",
      "hapi-fhir-converter");

  private final String what;
  private final String type;
  private final String artifact;

  HapiParts(String what, String type, String artifact) {
    this.what = what;
    this.type = type;
    this.artifact = artifact;
  }

  /**
   * Does nothing where the library is on the class path.
   *
   * @throws FaultException that names the library where it is not
   */
  public void require() {
    try {
      Class.forName(type, false, HapiParts.class.getClassLoader());
    } catch (ClassNotFoundException missing) {
      throw new FaultException(
          new Fault(
              "",
              what + " without the library that reads it",
              "ca.uhn.hapi.fhir:" + artifact + " on the class path",
              "add it to your build, or send the document as JSON of R4"));
    }
  }
}
