package org.isopter.mapper.record.tree;

import java.util.Locale;
import tools.jackson.databind.JsonNode;

/** Writes a single value as YAML, without quotes where every reader takes it as written. */
public final class YamlScalar {

  private static final String SAFE_INSIDE = " -_./+()%=;'";

  private YamlScalar() {}

  /** Returns a text as YAML, in quotes where it would be read as something else. */
  public static String of(String text) {
    return isPlain(text) ? text : quoted(text);
  }

  static String number(JsonNode node) {
    return node.isNumber() ? node.decimalValue().toPlainString() : node.asString();
  }

  private static boolean isPlain(String text) {
    if (text.isEmpty() || !opensPlain(text) || !PlainScalar.isClear(text)) {
      return false;
    }
    for (int i = 1; i < text.length(); i++) {
      if (!isSafe(text, i)) {
        return false;
      }
    }
    return text.charAt(text.length() - 1) != ' ';
  }

  private static boolean opensPlain(String text) {
    char first = text.charAt(0);
    boolean signed = (first == '+' || first == '-') && text.length() > 1;
    return isWordLetter(signed ? text.charAt(1) : first);
  }

  private static boolean isSafe(String text, int i) {
    char c = text.charAt(i);
    return isWordLetter(c) || SAFE_INSIDE.indexOf(c) >= 0 || (c == ':' && isTime(text, i));
  }

  /** A colon is safe within the clock time of a timestamp, where digits surround it. */
  private static boolean isTime(String text, int i) {
    return text.startsWith("T", 10)
        && i + 1 < text.length()
        && Character.isDigit(text.charAt(i - 1))
        && Character.isDigit(text.charAt(i + 1));
  }

  private static boolean isWordLetter(char c) {
    return Character.isLetterOrDigit(c) && !Character.isSurrogate(c);
  }

  private static String quoted(String text) {
    StringBuilder out = new StringBuilder().append('"');
    for (int i = 0; i < text.length(); i++) {
      char c = text.charAt(i);
      switch (c) {
        case '"', '\\' -> out.append('\\').append(c);
        case '\n' -> out.append("\\n");
        case '\t' -> out.append("\\t");
        default -> out.append(needsEscape(c) ? escape(c) : String.valueOf(c));
      }
    }
    return out.append('"').toString();
  }

  private static boolean needsEscape(char c) {
    boolean control = c < ' ' || (c >= 0x7F && c <= 0xA0);
    boolean separator = c == '\u2028' || c == '\u2029';
    return control || separator || c == '\uFEFF' || c >= '\uFFFE';
  }

  private static String escape(char c) {
    return String.format(Locale.ROOT, "\\u%04X", (int) c);
  }
}
