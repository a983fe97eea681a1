package org.isopter.task.page;

import java.time.OffsetDateTime;
import java.util.List;
import java.util.Optional;
import org.isopter.model.exam.Fact;
import org.isopter.model.letter.Wording;
import org.isopter.model.note.NoteWriter;

/** How the findings of a summary are put. */
public enum SummaryStyle {
  LETTER(Wording.LETTER),
  /** Bedside shorthand; plain words where shorthand has none. */
  SHORTHAND(SummaryStyle::shorthand);

  private final Wording words;

  SummaryStyle(Wording words) {
    this.words = words;
  }

  /** Returns how facts are worded in this style. */
  public Wording words() {
    return words;
  }

  /** Returns the word that the option takes. */
  @Override
  public String toString() {
    return this == LETTER ? "letter" : "shorthand";
  }

  private static Optional<String> shorthand(Fact<?> fact, OffsetDateTime performed) {
    NoteWriter writer = NoteWriter.standard();
    return writer.canSay(fact)
        ? Optional.of(writer.write(List.of(fact)).orThrow().strip())
        : Optional.empty();
  }
}
