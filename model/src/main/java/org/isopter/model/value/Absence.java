package org.isopter.model.value;

/** Why a finding has no value. "Not done" is never "normal". */
public enum Absence implements Concept {
  /** The examiner did not do it. */
  NOT_DONE(standard("not-performed", "Not Performed")),
  /** The person declined. */
  REFUSED(standard("asked-declined", "Asked But Declined")),
  /** It was tried or meant, and the person could not do it. */
  UNABLE(null),
  /** It makes no sense here, for instance a pupil behind an opaque cornea. */
  NOT_APPLICABLE(standard("not-applicable", "Not Applicable")),
  /** It is known and withheld. */
  MASKED(standard("masked", "Masked")),
  /** Nothing is known of it. */
  UNKNOWN(standard("unknown", "Unknown"));

  private final Code code;

  Absence(@org.jspecify.annotations.Nullable Code standard) {
    code = standard != null ? standard : Concept.local(this, "Unable to perform");
  }

  private static Code standard(String code, String display) {
    return new Code("http://terminology.hl7.org/CodeSystem/data-absent-reason", code, display);
  }

  @Override
  public String word() {
    return Concept.word(this);
  }

  /** Returns the FHIR data-absent-reason, or our own code where FHIR has none. */
  @Override
  public Code code() {
    return code;
  }
}
