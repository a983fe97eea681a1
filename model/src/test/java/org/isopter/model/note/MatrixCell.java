package org.isopter.model.note;

import java.util.Set;
import java.util.TreeSet;
import java.util.function.Function;

/**
 * One note of the matrix: a finding in a surface form, and what a careful reader takes from it.
 *
 * @param heading what it starts with
 * @param place the form with the words for its eyes: {@code two/before@R}
 * @param note the note
 * @param expected the facts, as {@link FactLines} writes them
 */
record MatrixCell(
    MatrixFinding finding,
    String heading,
    MatrixForm form,
    String place,
    String note,
    Set<String> expected) {

  /** What came of a cell. */
  enum Outcome {
    READ('.'),
    /** Not read, on purpose: the form is not clear for this finding, or the record has no place. */
    RIGHTLY_UNREAD('a'),
    /** Not read, with answers to choose from. */
    ASKED('?'),
    /** Not read, and left so: the table says why. */
    LEFT('o'),
    REFUSED('-'),
    MISREAD('!');

    final char mark;

    Outcome(char mark) {
      this.mark = mark;
    }
  }

  /** Says whether a careful reader takes nothing from it, or not all. */
  boolean mustAsk() {
    return finding.has("nowhere") || form.is("ask") || finding.names("ask", place);
  }

  /** Returns the mark of a cell that is read as it should be. */
  char wanted() {
    return (mustAsk() ? Outcome.RIGHTLY_UNREAD : Outcome.READ).mark;
  }

  /**
   * Returns what comes of the note.
   *
   * @param reader the reader
   */
  Outcome read(Function<String, Note> reader) {
    Note read = reader.apply(note);
    Set<String> facts = new TreeSet<>();
    read.facts().forEach(fact -> facts.add(FactLines.of(fact)));
    boolean whole = read.unread().isEmpty();
    boolean lost = whole && (mustAsk() || !facts.equals(expected));
    if (lost || !expected.containsAll(facts)) {
      return Outcome.MISREAD;
    }
    if (whole) {
      return Outcome.READ;
    }
    if (mustAsk()) {
      return Outcome.RIGHTLY_UNREAD;
    }
    if (form.is("odd") || finding.names("odd", place)) {
      return Outcome.LEFT;
    }
    return read.unread().stream().anyMatch(Unread::isQuestion) ? Outcome.ASKED : Outcome.REFUSED;
  }
}
