package org.isopter.mapper.fhir;

import org.isopter.model.value.Canonical;
import org.isopter.model.value.Code;

/** The codes and addresses of what stands around the findings. */
public final class FrameCodes {

  /** The panel observation of one examination, and its profile. */
  public static final Code PANEL = Code.local("finding", "eye-examination", "Eye examination");

  /** A statement that follows from findings and was not seen. */
  public static final Code DERIVED = Code.local("finding", "derived-statement", "Derived");

  /** The report and the document over it. */
  public static final Code REPORT = Code.loinc("70947-7", "General eye evaluation");

  /** The component of the panel that says where the examination took place. */
  public static final Code SETTING = Code.local("part", "setting", "Setting");

  static final Code CATEGORY =
      new Code("http://terminology.hl7.org/CodeSystem/observation-category", "exam", "Exam");

  static final Code ASSEMBLER =
      new Code(
          "http://terminology.hl7.org/CodeSystem/provenance-participant-type",
          "assembler",
          "Assembler");

  static final String RECORD_SYSTEM = Canonical.identifier("record");
  static final String HASH_SYSTEM = Canonical.identifier("record-sha-256");
  static final String SOFTWARE_SYSTEM = Canonical.identifier("software");

  private FrameCodes() {}
}
