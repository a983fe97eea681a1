package org.isopter.mapper.fhir.element;

import java.util.regex.Pattern;

/**
 * What FHIR asks of a text that is taken without its meaning (<a
 * href="https://hl7.org/fhir/R4/datatypes.html#primitive">R4, primitive types</a>).
 *
 * @param pattern what the whole text matches
 * @param wanted the same for people
 */
public record PrimitiveForm(Pattern pattern, String wanted) {

  static final PrimitiveForm ID = of("[A-Za-z0-9\\-.]{1,64}", "1 to 64 letters, digits, - and .");
  static final PrimitiveForm URI = of("\\S+", "a URI without blanks");
  public static final PrimitiveForm FULL_URL =
      of(
          "urn:uuid:[0-9a-f]{8}(-[0-9a-f]{4}){3}-[0-9a-f]{12}"
              + "|(?!urn:uuid:|\\S*/_history/)[A-Za-z][A-Za-z0-9+.-]*:\\S+",
          "a whole address, without a version; a UUID in small letters");
  static final PrimitiveForm CODE = of("\\S+( \\S+)*", "a code");
  public static final PrimitiveForm TEXT = of("[\\s\\S]*\\S[\\s\\S]*", "a text that is not blank");
  public static final PrimitiveForm INSTANT =
      of(
          "(?!0000)\\d{4}-(0[1-9]|1[0-2])-(0[1-9]|[12]\\d|3[01])"
              + "T([01]\\d|2[0-3]):[0-5]\\d:([0-5]\\d|60)(\\.\\d+)?(Z|[+-](0\\d|1[0-3]):[0-5]\\d|[+-]14:00)",
          "a time to the second with its offset");

  /** Returns the shape of a text that is one of a few words. */
  static PrimitiveForm oneOf(String... words) {
    return of(String.join("|", words), "one of " + String.join(", ", words));
  }

  boolean fits(String text) {
    return pattern.matcher(text).matches();
  }

  private static PrimitiveForm of(String pattern, String wanted) {
    return new PrimitiveForm(Pattern.compile(pattern), wanted);
  }
}
