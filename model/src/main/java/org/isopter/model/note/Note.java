package org.isopter.model.note;

import java.util.List;
import java.util.Optional;
import java.util.stream.Collectors;
import org.isopter.model.exam.Fact;
import org.isopter.model.value.Result;

/**
 * A note that was read: what it says, and what was not understood.
 *
 * <p>Every word of the note is in one of the two. Items that contradict each other are not read,
 * either of them.
 *
 * @param facts what the note says, in its order
 * @param unread what was not understood, in its order
 */
public record Note(List<Fact<?>> facts, List<Unread> unread) {

  public Note {
    facts = List.copyOf(facts);
    unread = List.copyOf(unread);
  }

  /** Returns the facts when all was understood, otherwise every piece that was not. */
  public Result<List<Fact<?>>> strict() {
    return unread.isEmpty()
        ? Result.ok(facts)
        : Result.refused(unread.stream().map(Unread::fault).toList());
  }

  /**
   * Returns what was not understood, word for word, one item a line; empty when all was.
   *
   * <p>It is a remark on the whole examination, for which finding it is about is just what is not
   * known.
   */
  public Optional<String> remark() {
    String text = unread.stream().map(Unread::text).distinct().collect(Collectors.joining("\n"));
    return Optional.of(text).filter(some -> !some.isEmpty());
  }
}
