package org.isopter.mapper.fhir;

import org.isopter.model.value.Canonical;
import org.isopter.model.value.Code;

/** The codes of other systems and the addresses that bundles need around the findings. */
final class FrameCodes {

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
  static final String SOFTWARE = "isopter";

  private FrameCodes() {}
}
