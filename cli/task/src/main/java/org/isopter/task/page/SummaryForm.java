package org.isopter.task.page;

import java.util.function.Supplier;
import org.isopter.model.letter.Letter;

/** The forms of a summary. */
public enum SummaryForm {
  TEXT("text", Letter::text),
  MARKDOWN("markdown", Letter::markdown),
  HTML("html", Letter::html);

  private final String word;
  private final Supplier<Letter> letter;

  SummaryForm(String word, Supplier<Letter> letter) {
    this.word = word;
    this.letter = letter;
  }

  public Letter letter() {
    return letter.get();
  }

  /** Returns the word that the option takes. */
  @Override
  public String toString() {
    return word;
  }
}
