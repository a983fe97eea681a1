package org.isopter.mapper.foreign.reading;

import java.util.List;
import java.util.Set;
import org.isopter.model.exam.Exam;

/**
 * An examination that was read, with everything that came along and found no place in it.
 *
 * @param exam the examination
 * @param carried what is written out again with it
 * @param rule the id of the rule by which its observations were put together; empty for a bundle of
 *     ours
 * @param read where each fact was read, in the order of the facts
 * @param from where the resources stood that it was made of, in their order; at least one
 */
public record ReadExam(
    Exam exam, Carried carried, String rule, List<ReadFact> read, List<String> from) {

  /**
   * Where a fact was read.
   *
   * @param at where the resource stood in its document
   * @param rules the ids of the rules by which the resource was translated
   */
  public record ReadFact(String at, Set<String> rules) {
    public ReadFact {
      rules = Set.copyOf(rules);
    }

    ReadFact within(String place) {
      return new ReadFact(place + at, rules);
    }
  }

  public ReadExam {
    read = List.copyOf(read);
    from = List.copyOf(from);
  }

  /** Returns this examination with something else carried along. */
  public ReadExam carrying(Carried other) {
    return new ReadExam(exam, other, rule, read, from);
  }

  /** Returns this examination as read from a document that stands at a place. */
  ReadExam within(String place) {
    List<ReadFact> moved = read.stream().map(fact -> fact.within(place)).toList();
    List<String> places = from.stream().map(at -> place + at).toList();
    return new ReadExam(exam, carried, rule, moved, places);
  }
}
