package org.isopter.model.entry;

import java.time.OffsetDateTime;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.function.BiPredicate;
import java.util.stream.Stream;
import org.isopter.model.exam.Exam;
import org.isopter.model.exam.Fact;
import org.isopter.model.exam.Header;
import org.isopter.model.exam.Identifier;
import org.isopter.model.exam.Measurement;
import org.isopter.model.exam.Status;
import org.isopter.model.finding.Layout;
import org.isopter.model.finding.Part;
import org.isopter.model.text.RecordText;
import org.isopter.model.value.Fault;

/** Changes a record that is written: a new record that names the old one, or facts added to it. */
public final class Amendment {

  private Amendment() {}

  /**
   * Returns the amended record: each fact takes the place of the one that speaks of the same
   * measurement, of what was not done, or of the same with less said of how it was measured, and is
   * added where there is none.
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
        amended(old.facts(), facts));
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
    return changed(old, facts, Measurement::areOfOne);
  }

  /** Returns the facts of a record whose place others take, and that are not said again. */
  public static List<Fact<?>> replaced(Exam old, List<Fact<?>> facts) {
    return changed(old, facts, Amendment::takesThePlace);
  }

  private static List<Fact<?>> changed(
      Exam old, List<Fact<?>> facts, BiPredicate<Fact<?>, Fact<?>> touches) {
    return old.facts().stream()
        .filter(fact -> facts.stream().anyMatch(other -> touches.test(other, fact)))
        .filter(fact -> !facts.contains(fact))
        .<Fact<?>>map(fact -> fact)
        .toList();
  }

  /**
   * Returns what keeps facts from amending a record: one of which cannot be said whether it
   * replaces what the record holds, for it says less of how it was measured, and one that would
   * take places away of which it says nothing, such as the other directions of gaze.
   */
  public static List<Fault> unclear(Exam old, List<Fact<?>> facts) {
    List<Fault> unclear = new ArrayList<>();
    for (Fact<?> fact : facts) {
      if (old.facts().stream().noneMatch(other -> Measurement.areOfOne(other, fact))) {
        old.facts().stream()
            .filter(other -> Measurement.of(fact).saysLessThan(Measurement.of(other)))
            .forEach(other -> unclear.add(lessSaid(fact, other)));
      }
      old.facts().stream()
          .filter(other -> Measurement.areOfOne(other, fact) && losesPlaces(other, fact))
          .forEach(other -> unclear.add(placesLost(fact, other)));
    }
    return unclear;
  }

  private static Fault lessSaid(Fact<?> fact, Fact<?> other) {
    return unclear(fact, "the method, the conditions and the time of what it is to replace", other);
  }

  private static Fault placesLost(Fact<?> fact, Fact<?> other) {
    return unclear(
        fact, "every place of which the record speaks, for it takes the place of all", other);
  }

  private static Fault unclear(Fact<?> fact, String wanted, Fact<?> other) {
    String seen = RecordText.of(fact);
    return new Fault(fact.finding().id(), seen, wanted, "the record holds " + RecordText.of(other));
  }

  /** A panel in which no part must be there holds places that are examined one by one. */
  private static boolean losesPlaces(Fact<?> old, Fact<?> fact) {
    Layout<?> layout = fact.finding().layout();
    return layout.choice().isEmpty()
        && layout.commonParts().stream().noneMatch(Part::isRequired)
        && fact.panel().isPresent()
        && old.panel().stream()
            .flatMap(panel -> panel.parts().keySet().stream())
            .anyMatch(place -> !fact.panel().orElseThrow().parts().containsKey(place));
  }

  private static List<Fact<?>> amended(List<Fact<?>> old, List<Fact<?>> facts) {
    List<Fact<?>> all = new ArrayList<>();
    for (Fact<?> fact : old) {
      if (facts.stream().noneMatch(other -> takesThePlace(other, fact))) {
        all.add(fact);
      }
    }
    all.addAll(facts);
    return all;
  }

  private static boolean takesThePlace(Fact<?> fact, Fact<?> old) {
    return Measurement.areOfOne(old, fact)
        || Measurement.of(old).saysLessThan(Measurement.of(fact));
  }
}
