package org.isopter.cli;

import java.util.function.Function;
import org.isopter.model.exam.Fact;
import org.isopter.model.note.NoteWriter;
import org.isopter.model.summary.FactWords;

/** How the findings of a summary are put. */
enum SummaryStyle {
  LETTER(FactWords::of),
  /** Bedside shorthand; plain words where shorthand has none. */
  SHORTHAND(SummaryStyle::shorthand);

  private final Function<Fact<?>, String> words;

  SummaryStyle(Function<Fact<?>, String> words) {
    this.words = words;
  }

  Function<Fact<?>, String> words() {
    return words;
  }

  /** Returns the word that the option takes. */
  @Override
  public String toString() {
    return this == LETTER ? "letter" : "shorthand";
  }

  private static String shorthand(Fact<?> fact) {
    NoteWriter writer = NoteWriter.standard();
    return writer.canSay(fact)
        ? writer.write(java.util.List.of(fact)).orThrow().strip()
        : FactWords.of(fact);
  }
}
