package org.isopter.mapper.fhir.element;

import org.isopter.model.value.Canonical;
import org.isopter.model.value.Code;

/** The codes of other systems and the addresses that bundles need around the findings. */
public final class FrameCodes {

  public static final Code CATEGORY =
      new Code("http://terminology.hl7.org/CodeSystem/observation-category", "exam", "Exam");

  public static final Code ASSEMBLER =
      new Code(
          "http://terminology.hl7.org/CodeSystem/provenance-participant-type",
          "assembler",
          "Assembler");

  static final String RECORD_SYSTEM = Canonical.identifier("record");
  public static final String HASH_SYSTEM = Canonical.identifier("record-sha-256");
  public static final String SOFTWARE_SYSTEM = Canonical.identifier("software");
  public static final String SOFTWARE = "isopter";

  private FrameCodes() {}
}
