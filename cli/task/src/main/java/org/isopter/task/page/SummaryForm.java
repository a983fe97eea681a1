package org.isopter.task.page;

import static java.nio.charset.StandardCharsets.UTF_8;

import java.util.function.Function;
import org.isopter.model.drawing.SeenBy;
import org.isopter.model.entry.ChartNote;
import org.isopter.model.exam.Exam;
import org.isopter.model.letter.Letter;
import org.isopter.model.letter.Summary;

/** The forms of a summary. */
public enum SummaryForm {
  TEXT("text", view -> Letter.text()),
  MARKDOWN("markdown", view -> Letter.markdown()),
  HTML("html", Letter::html),
  /** PDF/A-3A and PDF/UA-1, with the pictures of {@link #HTML}. */
  PDF("pdf", Letter::html),
  /** The facts alone, in shorthand that reads back the same, to paste into a chart. */
  SHORTHAND("shorthand", view -> Letter.text()) {
    @Override
    String page(Letter written, Exam exam) {
      return ChartNote.of(exam).text();
    }
  };

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

  /** Returns the ending of a file of this form, without a dot. */
  String ending() {
    return switch (this) {
      case TEXT, SHORTHAND -> "txt";
      case MARKDOWN -> "md";
      case HTML -> "html";
      case PDF -> "pdf";
    };
  }

  /** Returns what stands in a file of this form for the page of a letter. */
  byte[] bytes(String page) {
    return this == PDF ? PdfLetter.of(page) : page.getBytes(UTF_8);
  }

  /** Returns the page of an examination, with a letter of this form. */
  String page(Letter written, Exam exam) {
    return written.write(Summary.of(exam));
  }

  /** Returns the word that the option takes. */
  @Override
  public String toString() {
    return word;
  }
}
