package org.isopter.mapper.foreign;

import java.util.List;
import org.isopter.model.exam.Exam;

/**
 * An examination that was read, with everything that came along and found no place in it.
 *
 * @param exam the examination
 * @param carried what is written out again with it
 * @param rule the id of the rule by which its observations were put together; empty for a bundle of
 *     ours
 * @param from where the resources stood that became its facts, in their order
 */
public record ReadExam(Exam exam, Carried carried, String rule, List<String> from) {

  public ReadExam {
    from = List.copyOf(from);
  }

  /** Returns this with something else to carry. */
  ReadExam carrying(Carried other) {
    return new ReadExam(exam, other, rule, from);
  }

  /** Returns this as read from a document that stands at a place. */
  ReadExam within(String at) {
    return new ReadExam(exam, carried, rule, from.stream().map(place -> at + place).toList());
  }
}
