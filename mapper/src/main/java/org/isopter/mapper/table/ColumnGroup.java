package org.isopter.mapper.table;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.isopter.model.exam.Fact;
import org.isopter.model.finding.Datum;
import org.isopter.model.finding.DatumTexts;
import org.isopter.model.finding.Finding;
import org.isopter.model.finding.Part;
import org.isopter.model.finding.Spec;
import org.isopter.model.finding.Variant;

/**
 * A group of columns of the wide table: a finding, and what tells it from others of its kind at the
 * same eye, for instance the acuity unaided.
 *
 * @param finding the finding
 * @param mark the part that tells it apart, with its value; empty for facts that do not say
 */
record ColumnGroup(Finding<?> finding, Optional<Mark> mark) {

  /** A part with a value. */
  record Mark(String part, Datum datum) {

    /** Returns the word for the value; of what is so or not the name of the part says what. */
    String word() {
      return datum instanceof Datum.Truth truth
          ? (truth.value() ? "" : "not-") + part
          : DatumTexts.of(datum);
    }
  }

  /** Returns the slots of a finding: one that does not say, and one for each closed answer. */
  static List<ColumnGroup> of(Finding<?> finding) {
    List<ColumnGroup> slots = new ArrayList<>();
    slots.add(new ColumnGroup(finding, Optional.empty()));
    for (String key : finding.distinguishing()) {
      for (Datum datum : closed(spec(finding, key))) {
        slots.add(new ColumnGroup(finding, Optional.of(new Mark(key, datum))));
      }
    }
    return slots;
  }

  /** Returns the name of its columns. */
  String name() {
    String own = finding.id() + mark.map(by -> "-" + by.word()).orElse("");
    return own.replace('-', '_');
  }

  /** Returns the title for people. */
  String title() {
    return finding.title() + mark.map(by -> ", " + by.word()).orElse("");
  }

  /** Returns the slot that a fact of the finding belongs to. */
  static ColumnGroup of(Fact<?> fact) {
    for (String key : fact.finding().distinguishing()) {
      Optional<Datum> said = fact.panel().flatMap(panel -> panel.found(key));
      if (said.isPresent() && !closed(spec(fact.finding(), key)).isEmpty()) {
        return new ColumnGroup(fact.finding(), Optional.of(new Mark(key, said.get())));
      }
    }
    return new ColumnGroup(fact.finding(), Optional.empty());
  }

  private static Spec spec(Finding<?> finding, String key) {
    for (Variant variant : finding.layout().variants()) {
      for (Part<?, ?> part : variant.parts()) {
        if (part.key().equals(key)) {
          return part.spec();
        }
      }
    }
    throw new IllegalArgumentException(finding + " has no part " + key);
  }

  private static List<? extends Datum> closed(Spec spec) {
    if (spec instanceof Spec.Coded coded) {
      return coded.answers().concepts().stream().map(Datum.Coded::new).toList();
    }
    return spec instanceof Spec.Truth
        ? List.of(new Datum.Truth(true), new Datum.Truth(false))
        : List.of();
  }
}
