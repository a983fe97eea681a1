package org.isopter.mapper.record;

import java.math.BigDecimal;
import java.util.List;
import java.util.Map;
import org.isopter.mapper.json.QuotedText;

/**
 * Writes trees of texts, numbers, truths, maps and lists as JSON without a library, on lines of
 * their own and with the same bytes as {@link RecordWriter}.
 */
public final class PlainJson {

  private static final String INDENT = "  ";

  private final StringBuilder text = new StringBuilder();

  private PlainJson() {}

  /** Returns the tree as JSON, with a line feed at its end. */
  public static String of(Map<String, ?> tree) {
    PlainJson json = new PlainJson();
    json.value(tree, "\n");
    return json.text.append('\n').toString();
  }

  private void value(Object value, String line) {
    if (value instanceof Map<?, ?> members) {
      members(members, line);
    } else if (value instanceof List<?> items) {
      items(items, line);
    } else if (value instanceof String words) {
      QuotedText.add(words, text);
    } else {
      text.append(value instanceof BigDecimal number ? number.toPlainString() : value);
    }
  }

  private void members(Map<?, ?> members, String line) {
    String before = "{";
    for (Map.Entry<?, ?> member : members.entrySet()) {
      text.append(before).append(line).append(INDENT);
      QuotedText.add((String) member.getKey(), text);
      text.append(": ");
      value(member.getValue(), line + INDENT);
      before = ",";
    }
    text.append(members.isEmpty() ? "{ }" : line + "}");
  }

  private void items(List<?> items, String line) {
    String before = "[";
    for (Object item : items) {
      text.append(before).append(line).append(INDENT);
      value(item, line + INDENT);
      before = ",";
    }
    text.append(items.isEmpty() ? "[ ]" : line + "]");
  }
}
