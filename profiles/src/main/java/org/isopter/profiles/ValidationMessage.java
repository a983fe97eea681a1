package org.isopter.profiles;

/**
 * One thing that the validation says of a resource.
 *
 * @param severity how bad it is
 * @param path where it stands, as FHIRPath from the root, for instance {@code Observation.bodySite}
 * @param text what was seen and what was wanted
 */
public record ValidationMessage(Severity severity, String path, String text) {

  /** How bad a message is. */
  public enum Severity {
    /** The resource cannot be processed. */
    FATAL,
    /** The resource breaks a rule. */
    ERROR,
    /** The resource breaks no rule, and yet something may be wrong. */
    WARNING,
    /** For information. */
    INFORMATION
  }

  /** Says whether the resource is refused because of it. */
  public boolean isError() {
    return severity == Severity.FATAL || severity == Severity.ERROR;
  }

  /** Returns the message on one line. */
  @Override
  public String toString() {
    return severity + " " + path + ": " + text;
  }
}
