package org.isopter.mapper.foreign.run;

import java.util.Collections;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.Set;
import java.util.TreeSet;
import org.isopter.mapper.foreign.reading.Carried;
import org.isopter.mapper.foreign.reading.ReadExam;
import org.isopter.mapper.foreign.reading.ReadResource;
import org.isopter.mapper.foreign.reading.Reading;

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

  @Override
  public String toString() {
    return word();
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

  /**
   * Returns what passes. The strict policy refuses each document of which something is left over,
   * and every examination that a refused document has a part in.
   */
  public Judged judge(Batch batch) {
    Reading reading = batch.reading();
    Set<Integer> refused = new TreeSet<>();
    if (this == STRICT) {
      reading.resources().stream()
          .filter(Policy::isLeftOver)
          .forEach(read -> refused.add(Batch.document(read.at())));
    }
    List<ReadExam> exams =
        reading.exams().stream()
            .filter(exam -> Collections.disjoint(batch.documents(exam), refused))
            .map(this::applied)
            .toList();
    Carried rest = this == FAITHFUL ? reading.carried() : Carried.NOTHING;
    return new Judged(exams, rest, refused.stream().map(batch.origins()::get).toList());
  }

  /** Returns the examination with what the policy lets it carry. */
  public ReadExam applied(ReadExam exam) {
    return this == FAITHFUL ? exam : exam.carrying(Carried.NOTHING);
  }

  /** What tells only how a resource is kept and shown fails nobody. */
  private static boolean isLeftOver(ReadResource read) {
    return !Report.leftOver(read).isEmpty();
  }
}
