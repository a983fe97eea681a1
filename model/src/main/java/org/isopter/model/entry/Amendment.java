package org.isopter.model.entry;

import java.time.OffsetDateTime;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import org.isopter.model.exam.Exam;
import org.isopter.model.exam.Fact;
import org.isopter.model.exam.Header;
import org.isopter.model.exam.Identifier;
import org.isopter.model.exam.Measurement;
import org.isopter.model.exam.Status;

/** Changes a record that is written: a new record that names the old one, or facts added to it. */
public final class Amendment {

  private Amendment() {}

  /**
   * Returns the amended record: each fact takes the place of the one that speaks of the same
   * measurement, or of what was not done, and is added where there is none.
   *
   * @param old the record to replace
   * @param id the identifier of the new record
   * @param facts what is to be changed or added
   */
  public static Exam of(Exam old, Identifier id, List<Fact<?>> facts) {
    Header header = old.header();
    return new Exam(
        new Header(
            id,
            header.subject(),
            header.demographics(),
            header.performer(),
            header.performed(),
            Status.AMENDED,
            header.setting(),
            Optional.of(header.id()),
            header.remark()),
        replaced(old.facts(), facts));
  }

  /**
   * Returns the record with the facts and the remark of a note added; none is replaced. What the
   * note found at another time than that of the record bears that time.
   */
  public static Exam added(Exam old, Exam note) {
    List<Fact<?>> all = new ArrayList<>(old.facts());
    timed(old, note).stream().filter(fact -> !all.contains(fact)).forEach(all::add);
    return new Exam(withRemark(old.header(), note.header().remark()), all);
  }

  /** Returns the facts of a note with the times that they have within a record. */
  public static List<Fact<?>> timed(Exam old, Exam note) {
    OffsetDateTime when = note.header().performed();
    boolean same = when.isEqual(old.header().performed());
    return note.facts().stream()
        .<Fact<?>>map(
            fact -> same || fact.at().isPresent() || fact.panel().isEmpty() ? fact : fact.at(when))
        .toList();
  }

  private static Header withRemark(Header header, Optional<String> more) {
    String remark =
        String.join("\n", Stream.concat(header.remark().stream(), more.stream()).toList());
    return new Header(
        header.id(),
        header.subject(),
        header.demographics(),
        header.performer(),
        header.performed(),
        header.status(),
        header.setting(),
        header.amends(),
        Optional.of(remark).filter(some -> !some.isEmpty()));
  }

  /** Returns the facts of a record that a fact of the note would stand beside as another value. */
  public static List<Fact<?>> clashing(Exam old, List<Fact<?>> facts) {
    List<Fact<?>> clashing = new ArrayList<>();
    for (Fact<?> fact : old.facts()) {
      if (facts.stream().anyMatch(other -> isAbout(fact, other) && !fact.equals(other))) {
        clashing.add(fact);
      }
    }
    return clashing;
  }

  private static List<Fact<?>> replaced(List<Fact<?>> old, List<Fact<?>> facts) {
    List<Fact<?>> all = new ArrayList<>();
    for (Fact<?> fact : old) {
      if (facts.stream().noneMatch(other -> isAbout(fact, other))) {
        all.add(fact);
      }
    }
    all.addAll(facts);
    return all;
  }

  private static boolean isAbout(Fact<?> one, Fact<?> other) {
    Measurement first = Measurement.of(one);
    Measurement second = Measurement.of(other);
    boolean bothFound = one.panel().isPresent() && other.panel().isPresent();
    return bothFound
        ? first.equals(second)
        : first.anyTechnique().anyConditions().equals(second.anyTechnique().anyConditions());
  }
}
