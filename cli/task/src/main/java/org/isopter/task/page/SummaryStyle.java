package org.isopter.task.page;

import java.time.OffsetDateTime;
import java.util.function.BiFunction;
import org.isopter.model.exam.Fact;
import org.isopter.model.note.NoteWriter;
import org.isopter.model.text.FactText;

/** How the findings of a summary are put. */
public enum SummaryStyle {
  LETTER(FactText::of),
  /** Bedside shorthand; plain words where shorthand has none. */
  SHORTHAND(SummaryStyle::shorthand);

  private final BiFunction<Fact<?>, OffsetDateTime, String> words;

  SummaryStyle(BiFunction<Fact<?>, OffsetDateTime, String> words) {
    this.words = words;
  }

  public BiFunction<Fact<?>, OffsetDateTime, String> words() {
    return words;
  }

  /** Returns the word that the option takes. */
  @Override
  public String toString() {
    return this == LETTER ? "letter" : "shorthand";
  }

  private static String shorthand(Fact<?> fact, OffsetDateTime performed) {
    NoteWriter writer = NoteWriter.standard();
    return writer.canSay(fact)
        ? writer.write(java.util.List.of(fact)).orThrow().strip()
        : FactText.of(fact, performed);
  }
}
