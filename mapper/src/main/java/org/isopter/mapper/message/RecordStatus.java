package org.isopter.mapper.message;

import org.isopter.model.exam.Status;

/** How far results have come (HL7 tables 0085 and 0123). */
final class RecordStatus {

  static final String CORRECTED = "C";
  private static final String PRELIMINARY = "P";
  private static final String FINAL = "F";

  private RecordStatus() {}

  /** Returns the letter of the results of a record. */
  static String of(Status status) {
    return switch (status) {
      case PRELIMINARY -> PRELIMINARY;
      case FINAL, ENTERED_IN_ERROR -> FINAL;
      case AMENDED -> CORRECTED;
    };
  }
}
