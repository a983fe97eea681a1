package org.isopter.model.letter;

import java.util.List;

/** How a letter is laid out; every block ends in a line feed. */
interface Page {

  /** Returns the title with sentences under it, each starting a line. */
  String head(String title, List<String> lines);

  String paragraph(String text);

  /** Returns a heading with what stands under it. */
  String section(String heading, List<String> items);

  /** Lays the eyes out side by side, with what is true of both under them. */
  String table(List<Summary.Row> rows, String both);
}
