package org.isopter.task.check;

import java.util.HashSet;
import java.util.List;
import java.util.Set;
import org.isopter.model.check.Violation;
import org.isopter.task.input.InputDocument;

/** The suppressions of a run, and which of them were of use. */
public final class Suppressions {

  private final List<KnownViolation> all;
  private final Set<KnownViolation> used = new HashSet<>();
  private int hits;

  public Suppressions(List<KnownViolation> all) {
    this.all = List.copyOf(all);
  }

  /** Says whether a violation is suppressed, and keeps in mind by what. */
  boolean cover(InputDocument item, Violation violation) {
    List<KnownViolation> covering =
        all.stream().filter(one -> one.covers(item, violation)).toList();
    used.addAll(covering);
    hits += covering.isEmpty() ? 0 : 1;
    return !covering.isEmpty();
  }

  /** Returns how many violations were suppressed. */
  public int hits() {
    return hits;
  }

  /** Returns those that suppressed nothing. */
  public List<KnownViolation> unused() {
    return all.stream().filter(one -> !used.contains(one)).toList();
  }
}
