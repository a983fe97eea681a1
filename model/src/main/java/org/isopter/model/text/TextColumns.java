package org.isopter.model.text;

/** Cells of columns in plain text, filled with spaces; a cell that is too long stays whole. */
public final class TextColumns {

  private TextColumns() {}

  /** Returns a text with spaces behind it, as wide as its column, in characters. */
  public static String left(String text, int width) {
    return text + gap(text, width);
  }

  /** Returns a text with spaces before it, as wide as its column, in characters. */
  public static String right(String text, int width) {
    return gap(text, width) + text;
  }

  private static String gap(String text, int width) {
    return " ".repeat(Math.max(0, width - text.length()));
  }
}
