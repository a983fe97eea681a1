package org.isopter.model.entry;

import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.isopter.model.catalogue.Acuities;
import org.isopter.model.exam.Fact;
import org.isopter.model.finding.Finding;
import org.isopter.model.note.Note;
import org.isopter.model.note.NoteReader;

/**
 * An answer in shorthand to something that was asked for, so that it needs no heading.
 *
 * @param text the answer as a note has it, with the heading where the answer had none
 * @param note what it says
 * @param headed whether it came with a heading
 */
public record HeadedAnswer(String text, Note note, boolean headed) {

  private static final Set<Finding<?>> AT_DISTANCE = Set.of(Acuities.DISTANCE, Acuities.BOUND);

  /**
   * Returns the ways to read an answer in the order in which they are to be tried: with the heading
   * before it, with the heading before each of its clauses, and as it stands; that comes first
   * where it has a heading already.
   *
   * @param lead what stands before the heading, for instance {@code R: }
   */
  public static List<HeadedAnswer> ways(
      NoteReader reader, String lead, String heading, String answer) {
    HeadedAnswer alone = of(reader, lead + answer);
    // A second heading is not read; that of an acuity is the only one that may be left out.
    boolean has = alone.isClear() && !of(reader, lead + "VA " + answer).isClear();
    HeadedAnswer whole = of(reader, lead + heading + " " + answer);
    List<HeadedAnswer> headed = new ArrayList<>(List.of(whole));
    if (answer.indexOf(';') >= 0) {
      headed.add(of(reader, clauses(lead + heading, answer)));
    }
    if (has) {
      headed.add(0, new HeadedAnswer(alone.text, alone.note, true));
    } else {
      headed.add(alone);
    }
    return List.copyOf(headed);
  }

  /** Returns an answer as it stands. */
  static HeadedAnswer of(NoteReader reader, String text) {
    return new HeadedAnswer(text, reader.read(text), false);
  }

  private static String clauses(String heading, String answer) {
    return Stream.of(answer.split(";", -1))
        .filter(clause -> !clause.isBlank())
        .map(clause -> heading + " " + clause.strip())
        .collect(Collectors.joining("; "));
  }

  /**
   * Says whether it tells an acuity at distance, without saying so, where something else was asked
   * for: an acuity needs no heading in a note, and there it is a slip.
   */
  public boolean isStray(String heading) {
    return !headed
        && !heading.equals("VA")
        && note.facts().stream().map(Fact::finding).anyMatch(AT_DISTANCE::contains);
  }

  /** Says whether all of it was understood, and something is said. */
  public boolean isClear() {
    return note.unread().isEmpty() && !note.facts().isEmpty();
  }
}
