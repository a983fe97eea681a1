package org.isopter.task.page;

import org.isopter.model.text.TextColumns;

/** A thing for a terminal: its name, and below it what is to be known of it, a line each. */
final class TermList {

  private static final int NAME = 27;
  private static final int TERM = 19;

  private final StringBuilder page;

  TermList(String name) {
    this.page = new StringBuilder(name).append('\n');
  }

  /** Returns one line: a name, and in few words what has it. */
  static String line(String name, String words) {
    return TextColumns.left(name, NAME) + " " + words + "\n";
  }

  void row(String term, String text) {
    page.append("  ").append(TextColumns.left(term, TERM)).append(' ').append(text).append('\n');
  }

  @Override
  public String toString() {
    return page.toString();
  }
}
