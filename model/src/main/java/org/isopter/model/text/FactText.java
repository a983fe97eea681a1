package org.isopter.model.text;

import java.time.OffsetDateTime;
import java.util.List;
import org.isopter.model.exam.Fact;

/** What a fact says in the words of a letter. */
public final class FactText {

  private FactText() {}

  /**
   * Returns the value, its conditions and its remarks, or why there is none. A time of its own is
   * that of the clock on the wall of the examination, without a date on the day of the examination.
   *
   * @param performed the time of the examination
   */
  public static String of(Fact<?> fact, OffsetDateTime performed) {
    FactWords words = words(fact, performed);
    String context = context(words);
    return words.value(", ") + (context.isEmpty() ? "" : ", " + context) + remarks(words);
  }

  /** Returns the pieces of a fact in the words of a letter. */
  public static FactWords words(Fact<?> fact, OffsetDateTime performed) {
    return FactWords.of(fact, new LetterStyle(performed));
  }

  /** Returns technique, instrument and a time of its own; nothing where none is stated. */
  public static String context(FactWords words) {
    return String.join(", ", words.context());
  }

  /** Returns the remarks in brackets, with a space before them; nothing where there are none. */
  public static String remarks(FactWords words) {
    List<String> remarks = words.remarks();
    return remarks.isEmpty() ? "" : " (" + String.join(" ", remarks) + ")";
  }
}
