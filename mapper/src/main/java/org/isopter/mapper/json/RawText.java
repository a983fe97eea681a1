package org.isopter.mapper.json;

import java.util.Map;

/** Writes values as JSON on one line, escaping what RFC 8259 demands and nothing else. */
final class RawText {

  private static final String HEXADECIMAL = "0123456789ABCDEF";

  private final StringBuilder out = new StringBuilder(512);

  /** Returns a value as JSON; numbers as they were read. */
  static String of(Raw value) {
    RawText text = new RawText();
    text.add(value);
    return text.out.toString();
  }

  private void add(Raw value) {
    if (value instanceof Raw.Obj object) {
      add(object);
    } else if (value instanceof Raw.Arr list) {
      add(list);
    } else {
      add((Raw.Leaf) value);
    }
  }

  private void add(Raw.Obj object) {
    char before = '{';
    for (Map.Entry<String, Raw> member : object.members().entrySet()) {
      out.append(before);
      quoted(member.getKey());
      out.append(':');
      add(member.getValue());
      before = ',';
    }
    out.append(before == ',' ? "}" : "{}");
  }

  private void add(Raw.Arr list) {
    char before = '[';
    for (Raw item : list.items()) {
      out.append(before);
      add(item);
      before = ',';
    }
    out.append(before == ',' ? "]" : "[]");
  }

  private void add(Raw.Leaf leaf) {
    if (leaf.kind() == Raw.Kind.STRING) {
      quoted(leaf.text());
    } else {
      out.append(leaf.text());
    }
  }

  private void quoted(String text) {
    out.append('"');
    int from = 0;
    for (int i = 0; i < text.length(); i++) {
      char each = text.charAt(i);
      if (each < ' ' || each == '"' || each == '\\') {
        out.append(text, from, i);
        escape(each);
        from = i + 1;
      }
    }
    // A whole text is copied at once, a part of one character by character.
    out.append(from == 0 ? text : text.substring(from)).append('"');
  }

  private void escape(char each) {
    switch (each) {
      case '"', '\\' -> out.append('\\').append(each);
      case '\b' -> out.append("\\b");
      case '\f' -> out.append("\\f");
      case '\n' -> out.append("\\n");
      case '\r' -> out.append("\\r");
      case '\t' -> out.append("\\t");
      default ->
          out.append("\\u00").append(HEXADECIMAL.charAt(each >> 4)).append(HEXADECIMAL.charAt(each & 15));
    }
  }
}
