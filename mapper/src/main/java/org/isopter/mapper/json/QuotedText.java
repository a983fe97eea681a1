package org.isopter.mapper.json;

import org.apiguardian.api.API;
import org.apiguardian.api.API.Status;

/** Puts texts in quotes as JSON has them, escaping what RFC 8259 demands and nothing else. */
@API(status = Status.INTERNAL)
public final class QuotedText {

  private static final String HEXADECIMAL = "0123456789ABCDEF";

  private QuotedText() {}

  /** Returns a text in quotes. */
  public static String of(String text) {
    StringBuilder out = new StringBuilder(text.length() + 2);
    add(text, out);
    return out.toString();
  }

  /** Adds a text in quotes. */
  public static void add(String text, StringBuilder out) {
    out.append('"');
    int from = 0;
    for (int i = 0; i < text.length(); i++) {
      char each = text.charAt(i);
      if (each < ' ' || each == '"' || each == '\\') {
        out.append(text, from, i);
        escape(each, out);
        from = i + 1;
      }
    }
    // A whole text is copied at once, a part of one character by character.
    out.append(from == 0 ? text : text.substring(from)).append('"');
  }

  private static void escape(char each, StringBuilder out) {
    switch (each) {
      case '"', '\\' -> out.append('\\').append(each);
      case '\b' -> out.append("\\b");
      case '\f' -> out.append("\\f");
      case '\n' -> out.append("\\n");
      case '\r' -> out.append("\\r");
      case '\t' -> out.append("\\t");
      default ->
          out.append("\\u00")
              .append(HEXADECIMAL.charAt(each >> 4))
              .append(HEXADECIMAL.charAt(each & 15));
    }
  }
}
