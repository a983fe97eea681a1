package org.isopter.mapper.foreign;

import java.util.List;
import java.util.Locale;
import java.util.Optional;

/** What a caller wants done with what is left over. */
public enum Policy {
  /** It fails the input. */
  STRICT,
  /** It is reported and written out again with the examination. */
  FAITHFUL,
  /** It is reported and not written: for tables of research. */
  EXTRACT;

  /** Returns the word of the command line. */
  public String word() {
    return name().toLowerCase(Locale.ROOT);
  }

  /** Returns the policy that a word names. */
  public static Optional<Policy> of(String word) {
    for (Policy policy : values()) {
      if (policy.word().equals(word)) {
        return Optional.of(policy);
      }
    }
    return Optional.empty();
  }

  /** Says whether a reading may go on; only the strict policy refuses any. */
  public boolean accepts(Reading reading) {
    return this != STRICT || reading.resources().stream().noneMatch(Policy::isLeftOver);
  }

  /** Returns the examination with what the policy lets it carry. */
  public ReadExam applied(ReadExam exam) {
    return this == FAITHFUL ? exam : exam.carrying(Carried.NOTHING);
  }

  /** What tells only how a resource is kept and shown fails nobody. */
  private static boolean isLeftOver(ReadResource read) {
    List<Placed> leftover =
        read.treated() instanceof Treated.Translated translated ? translated.leftover() : List.of();
    return read.treated() instanceof Treated.Kept
        || leftover.stream().anyMatch(leaf -> !Own.isTransport(leaf));
  }
}
