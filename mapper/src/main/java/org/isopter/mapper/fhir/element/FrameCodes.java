package org.isopter.mapper.fhir.element;

import org.isopter.model.value.Canonical;

/** The addresses that bundles need around the findings. */
public final class FrameCodes {

  static final String RECORD_SYSTEM = Canonical.identifier("record");
  public static final String HASH_SYSTEM = Canonical.identifier("record-sha-256");
  public static final String SOFTWARE_SYSTEM = Canonical.identifier("software");
  public static final String SOFTWARE = "isopter";

  private FrameCodes() {}
}
