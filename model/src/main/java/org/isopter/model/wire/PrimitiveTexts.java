package org.isopter.model.wire;

/**
 * Whether a text is a value of a primitive type of FHIR (<a
 * href="https://hl7.org/fhir/R4/datatypes.html#primitive">R4, primitive types</a>), told without a
 * regular expression, for every element of every resource is asked.
 */
public final class PrimitiveTexts {

  private static final String UUID = "urn:uuid:";

  private static final int LONGEST_ID = 64;
  private static final int UUID_LENGTH = 36;

  private PrimitiveTexts() {}

  /** Says whether a text is an id: 1 to 64 letters, digits, dashes and points. */
  public static boolean isId(String text) {
    for (int i = 0; i < text.length(); i++) {
      if (!isOfId(text.charAt(i))) {
        return false;
      }
    }
    return !text.isEmpty() && text.length() <= LONGEST_ID;
  }

  /** Says whether a text is the URI of a UUID, in small letters as R4 wants them. */
  public static boolean isUuid(String text) {
    return text.length() == UUID.length() + UUID_LENGTH
        && text.startsWith(UUID)
        && isHexWithDashes(text);
  }

  private static boolean isHexWithDashes(String text) {
    for (int at = 0; at < UUID_LENGTH; at++) {
      char c = text.charAt(UUID.length() + at);
      boolean dash = at == 8 || at == 13 || at == 18 || at == 23;
      boolean fits = dash ? c == '-' : isDigit(c) || (c >= 'a' && c <= 'f');
      if (!fits) {
        return false;
      }
    }
    return true;
  }

  /** Says whether a character may stand in an id. */
  public static boolean isOfId(int c) {
    return isLetter(c) || isDigit(c) || c == '-' || c == '.';
  }

  /** Says whether a character is one of the letters a to z, small or large. */
  public static boolean isLetter(int c) {
    return (c >= 'a' && c <= 'z') || (c >= 'A' && c <= 'Z');
  }

  /** Says whether a character is one of the digits 0 to 9. */
  public static boolean isDigit(int c) {
    return c >= '0' && c <= '9';
  }
}
