package org.isopter.model.exam;

import org.isopter.model.value.Code;

/** The codes of what stands around the findings of an examination. */
public final class ExamCodes {

  /** The panel of one examination; its code names its profile too. */
  public static final Code PANEL = Code.local("finding", "eye-examination", "Eye examination");

  /** A statement that follows from findings and was not seen. */
  public static final Code DERIVED = Code.local("finding", "derived-statement", "Derived");

  /** The report and the document over the panel. */
  public static final Code REPORT = Code.loinc("70947-7", "General eye evaluation");

  /** The part of the panel that says where the examination took place. */
  public static final Code SETTING = Code.local("part", "setting", "Setting");

  /** What the software did that put a record together. */
  public static final Code ASSEMBLER =
      new Code(
          "http://terminology.hl7.org/CodeSystem/provenance-participant-type",
          "assembler",
          "Assembler");

  private ExamCodes() {}
}
