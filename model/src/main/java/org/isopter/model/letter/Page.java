package org.isopter.model.letter;

import java.util.List;

/** How a letter is laid out; every block ends in a line feed. */
interface Page {

  String title(String text);

  String heading(String text);

  String paragraph(String text);

  String items(List<String> items);

  /** Lays the eyes out side by side. */
  String table(List<Summary.Row> rows);
}
