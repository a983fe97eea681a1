package org.isopter.profiles.compiled;

import java.time.YearMonth;
import java.util.List;
import java.util.function.IntPredicate;
import java.util.function.Predicate;
import java.util.regex.Pattern;
import org.isopter.model.wire.PrimitiveTexts;

/**
 * Whether a text is surely a value of a primitive type of R4. Narrower than the standard: what the
 * reference validator might remark on, such as markup, is none.
 */
final class Primitives {

  private static final int LONGEST = 100_000;
  private static final int LONGEST_URI = 500;
  private static final Pattern DECIMAL =
      Pattern.compile("-?(?:0|[1-9][0-9]{0,8})(?:\\.[0-9]{1,8})?");
  private static final Pattern INTEGER = Pattern.compile("0|-?[1-9][0-9]{0,8}");
  private static final Pattern DATE = Pattern.compile("(?:19|20)[0-9]{2}-[0-9]{2}-[0-9]{2}");
  private static final Pattern INSTANT =
      Pattern.compile(
          "(?:19|20)[0-9]{2}-[0-9]{2}-[0-9]{2}T[0-9]{2}:[0-9]{2}:[0-5][0-9](?:\\.[0-9]{1,3})?"
              + "(?:Z|[+-](?:0[0-9]|1[0-3]):[0-5][0-9])");
  private static final List<String> ENTITIES = List.of("&amp;", "&lt;", "&gt;", "&quot;", "&#39;");
  private static final String DIV = "<div xmlns=\"http://www.w3.org/1999/xhtml\">";
  private static final String END = "</div>";

  private Primitives() {}

  /** Says whether a JSON text is surely a value of the type. */
  static boolean isText(String type, String text) {
    return texts(type).test(text);
  }

  /** Returns the test whether a JSON text is surely a value of the type. */
  static Predicate<String> texts(String type) {
    return switch (type) {
      case "id" -> PrimitiveTexts::isId;
      case "code" -> text -> isOf(text, 0, c -> c > ' ' && c <= '~');
      case "uri", "canonical" -> text -> text.length() <= LONGEST_URI && isUri(text);
      case "string", "markdown" -> Primitives::isPlain;
      case "dateTime" -> text -> isDate(text) || isInstant(text);
      case "instant" -> Primitives::isInstant;
      case "xhtml" -> Primitives::isNarrative;
      default -> text -> false;
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

  /** Says whether a text has at least one character from a place on, and each fits. */
  private static boolean isOf(String text, int from, IntPredicate fits) {
    for (int i = from; i < text.length(); i++) {
      if (!fits.test(text.charAt(i))) {
        return false;
      }
    }
    return from < text.length();
  }

  private static boolean isUri(String text) {
    if (PrimitiveTexts.isUuid(text)) {
      return true;
    }
    if (text.startsWith("http://") || text.startsWith("https://")) {
      return isWeb(text, text.indexOf("//") + 2);
    }
    return text.length() > 1
        && isOf(text, 0, PrimitiveTexts::isLetter)
        && Character.isUpperCase(text.charAt(0));
  }

  /** A host, then steps none of which is empty, and a slash at the end at most. */
  private static boolean isWeb(String text, int from) {
    int host = from;
    while (host < text.length() && isOfHost(text.charAt(host))) {
      host++;
    }
    return host > from && (host == text.length() || isSteps(text, host));
  }

  private static boolean isSteps(String text, int from) {
    boolean slash = false;
    for (int i = from; i < text.length(); i++) {
      char c = text.charAt(i);
      boolean next = c == '/';
      boolean fits = next ? !slash : i > from && (PrimitiveTexts.isOfId(c) || c == '_');
      if (!fits) {
        return false;
      }
      slash = next;
    }
    return true;
  }

  private static boolean isOfHost(int c) {
    return (c >= 'a' && c <= 'z') || PrimitiveTexts.isDigit(c) || c == '-' || c == '.';
  }

  private static boolean isPlain(String text) {
    return !text.isEmpty()
        && text.length() <= LONGEST
        && text.equals(text.strip())
        && !hasTag(text)
        && isOfPlainCharacters(text);
  }

  /** Says whether something looks like the beginning of a tag. */
  private static boolean hasTag(String text) {
    for (int at = text.indexOf('<'); at >= 0; at = text.indexOf('<', at + 1)) {
      char next = at + 1 < text.length() ? text.charAt(at + 1) : ' ';
      if (PrimitiveTexts.isLetter(next) || "/!?".indexOf(next) >= 0) {
        return true;
      }
    }
    return false;
  }

  private static boolean isOfPlainCharacters(String text) {
    int point;
    for (int i = 0; i < text.length(); i += Character.charCount(point)) {
      point = text.charAt(i);
      if (point < ' ' || point > '~') {
        point = text.codePointAt(i);
        if (!isPlainBeyondAscii(point)) {
          return false;
        }
      }
    }
    return true;
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
    int end = text.length() - END.length();
    return text.length() <= LONGEST
        && text.startsWith(DIV)
        && end >= DIV.length()
        && text.endsWith(END)
        && isOfPlainCharacters(text)
        && isContent(text, DIV.length(), end);
  }

  /** Says whether there are words, without markup. */
  private static boolean isContent(String text, int from, int to) {
    boolean words = false;
    for (int i = from; i < to; i++) {
      char c = text.charAt(i);
      if (c == '<' || c == '>' || (c == '&' && !isEntity(text, i))) {
        return false;
      }
      words |= !Character.isWhitespace(c);
    }
    return words;
  }

  private static boolean isEntity(String text, int at) {
    for (String entity : ENTITIES) {
      if (text.startsWith(entity, at)) {
        return true;
      }
    }
    return false;
  }

  private static boolean isDate(String text) {
    return DATE.matcher(text).matches() && isDay(text);
  }

  private static boolean isInstant(String text) {
    return INSTANT.matcher(text).matches()
        && isDay(text)
        && digits(text, 11, 13) < 24
        && digits(text, 14, 16) < 60;
  }

  /** Says whether there is the day with which a text begins. */
  private static boolean isDay(String text) {
    int month = digits(text, 5, 7);
    return month >= 1
        && month <= 12
        && YearMonth.of(digits(text, 0, 4), month).isValidDay(digits(text, 8, 10));
  }

  private static int digits(String text, int from, int to) {
    return Integer.parseInt(text, from, to, 10);
  }
}
