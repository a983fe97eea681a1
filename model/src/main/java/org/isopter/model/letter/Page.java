package org.isopter.model.letter;

import java.util.List;
import java.util.Optional;
import org.isopter.model.exam.Exam;

/** How a letter is laid out; every block ends in a line feed. */
interface Page {

  /** Returns the title with sentences under it, each starting a line. */
  String head(String title, List<String> lines);

  String paragraph(String text);

  /** Returns a heading with what stands under it. */
  String section(String heading, List<String> items);

  /** Lays the eyes out side by side, with what is true of both under them. */
  String table(List<Summary.Row> rows, String both);

  /** Returns the pictures of an examination; nothing where the form has none. */
  default Optional<String> pictures(Exam exam) {
    return Optional.empty();
  }

  /** Returns the caution that stands on every page. */
  default String caution(String text) {
    return paragraph(text);
  }

  /** Returns the document that holds the blocks. */
  default String document(String title, String blocks) {
    return blocks;
  }
}
