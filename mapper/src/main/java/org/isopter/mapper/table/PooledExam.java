package org.isopter.mapper.table;

import java.util.List;
import java.util.Optional;
import org.isopter.model.exam.Exam;

/**
 * An examination with what a table says of it besides.
 *
 * @param exam the examination
 * @param person what is known of the person
 * @param origins where each fact was read, in the order of the facts
 * @param site the pseudonym of where it took place, where it is wanted
 */
public record PooledExam(
    Exam exam, Person person, List<FactOrigin> origins, Optional<String> site) {

  /**
   * Puts them together.
   *
   * @throws IllegalArgumentException when there are not as many origins as facts
   */
  public PooledExam {
    origins = List.copyOf(origins);
    if (origins.size() != exam.facts().size()) {
      throw new IllegalArgumentException(
          exam.facts().size() + " facts and " + origins.size() + " origins");
    }
  }

  /** Puts them together, of no site. */
  public PooledExam(Exam exam, Person person, List<FactOrigin> origins) {
    this(exam, person, origins, Optional.empty());
  }

  /** Returns this with another examination of as many facts. */
  public PooledExam with(Exam other, Person known) {
    return new PooledExam(other, known, origins, site);
  }
}
