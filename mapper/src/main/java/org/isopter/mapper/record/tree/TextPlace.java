package org.isopter.mapper.record.tree;

import org.jspecify.annotations.Nullable;

/**
 * Where something stands in a record: line and column in the text, and the keys that lead to it.
 *
 * <p>The path is spelled out only when a message needs it.
 *
 * @param up the place around it; absent for the whole record
 * @param step what leads from there to here: {@code .key} or {@code [0]}
 * @param line the line, from 1
 * @param column the column in characters, from 1
 */
public record TextPlace(@Nullable TextPlace up, String step, int line, int column) {

  static TextPlace root(int line, int column) {
    return new TextPlace(null, "", line, column);
  }

  /** Returns the place of a key that stands here, at a line and column from 1. */
  public TextPlace key(String key, int atLine, int atColumn) {
    return new TextPlace(this, "." + key, atLine, atColumn);
  }

  /** Returns the place of a key that is missing here. */
  public TextPlace key(String key) {
    return key(key, line, column);
  }

  TextPlace item(int index, int atLine, int atColumn) {
    return new TextPlace(this, "[" + index + "]", atLine, atColumn);
  }

  @Override
  public String toString() {
    StringBuilder path = new StringBuilder();
    spell(path);
    String position = "line " + line + ", column " + column;
    return path.isEmpty() ? position : position + ": " + path.substring(1);
  }

  private void spell(StringBuilder path) {
    if (up != null) {
      up.spell(path);
    }
    path.append(step);
  }
}
