package org.isopter.mapper.json;

import java.util.Map;

/** Writes values as JSON on one line. */
final class RawText {

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
      QuotedText.add(member.getKey(), out);
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
      QuotedText.add(leaf.text(), out);
    } else {
      out.append(leaf.text());
    }
  }
}
