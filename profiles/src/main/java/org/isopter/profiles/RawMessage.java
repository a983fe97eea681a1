package org.isopter.profiles;

import ca.uhn.fhir.validation.SingleValidationMessage;
import java.util.Objects;
import org.isopter.profiles.ValidationMessage.Severity;

/**
 * What the validation library says, before it is put in our words.
 *
 * @param severity how bad it is
 * @param path where; empty for the whole
 * @param id the library's name for this kind of message; of an invariant, its profile and key
 * @param text the library's words
 */
record RawMessage(Severity severity, String path, String id, String text) {

  static RawMessage of(SingleValidationMessage message) {
    return new RawMessage(
        Severity.valueOf(message.getSeverity().name()),
        plain(Objects.requireNonNullElse(message.getLocationString(), "")),
        Objects.requireNonNullElse(message.getMessageId(), ""),
        Objects.requireNonNullElse(message.getMessage(), ""));
  }

  /** In a bundle the library writes the type and id of each resource into the path. */
  private static String plain(String path) {
    return path.replaceAll("/\\*.*?\\*/", "");
  }

  boolean isError() {
    return severity == Severity.ERROR || severity == Severity.FATAL;
  }

  /** Says whether this stands at the place of the other or somewhere in it. */
  boolean isWithin(RawMessage other) {
    return path.equals(other.path) || path.startsWith(other.path + ".");
  }
}
