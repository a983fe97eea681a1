package org.isopter.profiles.compiled;

import java.time.DateTimeException;
import java.time.LocalDate;
import java.time.OffsetDateTime;
import java.util.regex.Pattern;

/**
 * Whether a text is surely a value of a primitive type of R4. Narrower than the standard: what the
 * reference validator might remark on, such as markup, is none.
 */
final class Primitives {

  private static final Pattern TAG = Pattern.compile("<[A-Za-z/!?]");
  private static final int LONGEST = 100_000;
  private static final int LONGEST_URI = 500;
  private static final Pattern ID = Pattern.compile("[A-Za-z0-9\\-.]{1,64}");
  private static final Pattern CODE = Pattern.compile("[!-~]+");
  private static final Pattern URI =
      Pattern.compile(
          "(?:https?://[a-z0-9.\\-]+(?:/[A-Za-z0-9._\\-]+)*/?"
              + "|urn:uuid:[0-9a-f]{8}(?:-[0-9a-f]{4}){3}-[0-9a-f]{12}|[A-Z][A-Za-z]+)");
  private static final Pattern DECIMAL =
      Pattern.compile("-?(?:0|[1-9][0-9]{0,8})(?:\\.[0-9]{1,8})?");
  private static final Pattern INTEGER = Pattern.compile("0|-?[1-9][0-9]{0,8}");
  private static final Pattern DATE = Pattern.compile("(?:19|20)[0-9]{2}-[0-9]{2}-[0-9]{2}");
  private static final Pattern INSTANT =
      Pattern.compile(
          "(?:19|20)[0-9]{2}-[0-9]{2}-[0-9]{2}T[0-9]{2}:[0-9]{2}:[0-5][0-9](?:\\.[0-9]{1,3})?"
              + "(?:Z|[+-](?:0[0-9]|1[0-3]):[0-5][0-9])");
  private static final Pattern ENTITY = Pattern.compile("&(?:amp|lt|gt|quot|#39);");
  private static final Pattern MARKUP = Pattern.compile("[<>&]");
  private static final String DIV = "<div xmlns=\"http://www.w3.org/1999/xhtml\">";
  private static final String END = "</div>";

  private Primitives() {}

  /** Says whether a JSON text is surely a value of the type. */
  static boolean isText(String type, String text) {
    return switch (type) {
      case "id" -> ID.matcher(text).matches();
      case "code" -> CODE.matcher(text).matches();
      case "uri", "canonical" -> text.length() <= LONGEST_URI && URI.matcher(text).matches();
      case "string", "markdown" -> isPlain(text);
      case "dateTime" -> isDate(text) || isInstant(text);
      case "instant" -> isInstant(text);
      case "xhtml" -> isNarrative(text);
      default -> false;
    };
  }

  /** Says whether the digits of a JSON number are surely a value of the type. */
  static boolean isNumber(String type, String digits) {
    return switch (type) {
      case "decimal" -> DECIMAL.matcher(digits).matches();
      case "integer" -> INTEGER.matcher(digits).matches();
      default -> false;
    };
  }

  private static boolean isPlain(String text) {
    return !text.isEmpty()
        && text.length() <= LONGEST
        && text.equals(text.strip())
        && !TAG.matcher(text).find()
        && isOfPlainCharacters(text);
  }

  private static boolean isOfPlainCharacters(String text) {
    int point;
    for (int i = 0; i < text.length(); i += Character.charCount(point)) {
      point = text.codePointAt(i);
      if (!isPlain(point)) {
        return false;
      }
    }
    return true;
  }

  private static boolean isPlain(int point) {
    return (point >= ' ' && point <= '~') || isPlainBeyondAscii(point);
  }

  private static boolean isPlainBeyondAscii(int point) {
    return switch (Character.getType(point)) {
      case Character.CONTROL,
          Character.FORMAT,
          Character.SURROGATE,
          Character.PRIVATE_USE,
          Character.UNASSIGNED,
          Character.LINE_SEPARATOR,
          Character.PARAGRAPH_SEPARATOR ->
          false;
      default -> !Character.isSpaceChar(point);
    };
  }

  private static boolean isNarrative(String text) {
    return text.length() <= LONGEST
        && text.startsWith(DIV)
        && text.endsWith(END)
        && isOfPlainCharacters(text)
        && isContent(text.substring(DIV.length(), text.length() - END.length()));
  }

  private static boolean isContent(String text) {
    return !text.isBlank() && !MARKUP.matcher(ENTITY.matcher(text).replaceAll("")).find();
  }

  private static boolean isDate(String text) {
    return DATE.matcher(text).matches() && parses(() -> LocalDate.parse(text));
  }

  private static boolean isInstant(String text) {
    return INSTANT.matcher(text).matches() && parses(() -> OffsetDateTime.parse(text));
  }

  private static boolean parses(Runnable parse) {
    try {
      parse.run();
      return true;
    } catch (DateTimeException wrong) {
      return false;
    }
  }
}
