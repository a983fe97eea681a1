package org.isopter.model.clinical.statement;

import org.isopter.model.finding.Citation;

/** The sources that more than one clinical function stands on. */
public final class Sources {

  /** Distance acuity: notations, suffixes, the VAS and the five-row rule. */
  static final Citation DICOM_RR = new Citation("DICOM PS3.17 Annex RR.2.2 to RR.2.4");

  /** The definition of logMAR, and of the letter score that follows from it. */
  public static final Citation ACUITY_FORMULAS =
      new Citation(
          "logMAR = -log10(decimal), by definition; letters = 85 - 50 logMAR: Gregori, Feuer and"
              + " Rosenfeld 2010, Retina; VAS = 100 - 50 logMAR: DICOM PS3.17 Annex RR");

  /** What a letter is worth on a chart whose lines step by 0.1 logMAR. */
  public static final Citation LETTER_VALUE =
      new Citation(
          "0.02 logMAR a letter at five letters a 0.1 line: chart-design table, Br J Ophthalmol;"
              + " no value on traditional charts: DICOM PS3.17 RR.2.3; Charles and Frost 2022, Eye"
              + " 36:1709");

  /** Vision impairment. */
  public static final Citation WHO =
      new Citation(
          "WHO fact sheet October 2018 and ICD-10 H54 (table and coding notes); carried into the"
              + " numbering of ICD-11 from memory; acuity as presented, better eye");

  /** What fits a diagram of the pathway. */
  public static final Citation PUPIL_WIRING =
      new Citation(
          "pupil pathways: Trobe; NOVEL, University of Utah; McGee, Evidence-Based Physical"
              + " Diagnosis ch. 21; Practical Neurology table 6; synechiae and small irregular"
              + " pupils from memory; combined lesions computed from the wiring");

  private Sources() {}
}
