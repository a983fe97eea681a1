package org.isopter.task.page;

import java.util.function.Function;
import org.isopter.model.drawing.SeenBy;
import org.isopter.model.letter.Letter;

/** The forms of a summary. */
public enum SummaryForm {
  TEXT("text", view -> Letter.text()),
  MARKDOWN("markdown", view -> Letter.markdown()),
  HTML("html", Letter::html);

  private final String word;
  private final Function<SeenBy, Letter> letter;

  SummaryForm(String word, Function<SeenBy, Letter> letter) {
    this.word = word;
    this.letter = letter;
  }

  /** Returns the letter in this form. */
  public Letter letter() {
    return letter(SeenBy.USUAL);
  }

  /** Returns a letter whose pictures, if it has any, are seen from one side. */
  public Letter letter(SeenBy view) {
    return letter.apply(view);
  }

  /** Returns the word that the option takes. */
  @Override
  public String toString() {
    return word;
  }
}
