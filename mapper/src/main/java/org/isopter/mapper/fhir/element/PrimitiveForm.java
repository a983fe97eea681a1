package org.isopter.mapper.fhir.element;

import java.util.function.Predicate;
import java.util.regex.Pattern;
import org.isopter.model.wire.PrimitiveTexts;

/**
 * What FHIR asks of a text that is taken without its meaning (<a
 * href="https://hl7.org/fhir/R4/datatypes.html#primitive">R4, primitive types</a>).
 *
 * @param shape what the whole text is
 * @param wanted the same for people
 */
public record PrimitiveForm(Predicate<String> shape, String wanted) {

  private static final Pattern ADDRESS =
      Pattern.compile("(?!urn:uuid:|\\S*/_history/)[A-Za-z][A-Za-z0-9+.-]*:\\S+");

  static final PrimitiveForm ID =
      new PrimitiveForm(PrimitiveTexts::isId, "1 to 64 letters, digits, - and .");
  static final PrimitiveForm URI = of("\\S+", "a URI without blanks");
  public static final PrimitiveForm FULL_URL =
      new PrimitiveForm(
          text -> PrimitiveTexts.isUuid(text) || ADDRESS.matcher(text).matches(),
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
    return shape.test(text);
  }

  private static PrimitiveForm of(String pattern, String wanted) {
    Pattern whole = Pattern.compile(pattern);
    return new PrimitiveForm(text -> whole.matcher(text).matches(), wanted);
  }
}
