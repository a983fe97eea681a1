package org.isopter.mapper.foreign.observation;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import org.isopter.mapper.foreign.ledger.Ledger;
import org.isopter.mapper.foreign.ledger.Reason;
import org.isopter.mapper.foreign.ledger.Refusal;
import org.isopter.mapper.foreign.ledger.Why;
import org.isopter.mapper.foreign.vocabulary.Meaning;
import org.isopter.model.exam.Fact;

/** The facts and the reasons of one observation, gathered step by step. */
final class Gathering {

  private final Ledger ledger;
  private final MethodAndNotes methodAndNotes;
  private final List<Reason> reasons = new ArrayList<>();
  private final List<Fact<?>> facts = new ArrayList<>();

  Gathering(Ledger ledger, MethodAndNotes methodAndNotes) {
    this.ledger = ledger;
    this.methodAndNotes = methodAndNotes;
  }

  /** A step that may be refused. */
  interface Step<T> {
    T run() throws Refusal;
  }

  /** Runs a step; a refusal is noted, so that all reasons are given and not only the first. */
  <T> Optional<T> attempt(Step<T> step) {
    try {
      return Optional.of(step.run());
    } catch (Refusal refusal) {
      refused(refusal);
      return Optional.empty();
    }
  }

  /** Notes a refusal. */
  void refused(Refusal refusal) {
    reasons.add(refusal.reason());
  }

  /** Returns why the latest step that was refused was so. */
  Optional<Why> lastReason() {
    return reasons.isEmpty()
        ? Optional.empty()
        : Optional.of(reasons.get(reasons.size() - 1).why());
  }

  /** Adds the facts of a step, or its reason and nothing; says whether there are any. */
  boolean taking(Step<List<Fact<?>>> step, Meaning meaning) {
    Ledger.Mark mark = ledger.mark();
    Optional<List<Fact<?>>> complete = attempt(() -> withMethod(step.run(), meaning));
    if (complete.isEmpty()) {
      ledger.backTo(mark);
    }
    for (Fact<?> fact : complete.orElse(List.of())) {
      facts.add(facts.isEmpty() ? methodAndNotes.remarked(fact) : fact);
    }
    return complete.isPresent();
  }

  /** Returns the facts so far. */
  List<Fact<?>> facts() {
    return facts;
  }

  /** Returns how many facts and reasons there are so far. */
  int count() {
    return facts.size() + reasons.size();
  }

  /**
   * Returns the reasons, what is most to the point first, in the order of the list of reasons.
   *
   * @param eyeless whether the eye could not be read: that none was found follows from it
   */
  List<Reason> reasons(boolean eyeless) {
    List<Reason> sorted = new ArrayList<>(reasons);
    if (eyeless && sorted.size() > 1) {
      sorted.subList(1, sorted.size()).removeIf(reason -> reason.why() == Why.NO_SIDE);
    }
    sorted.sort(Comparator.comparing(Reason::why));
    return sorted;
  }

  private List<Fact<?>> withMethod(List<Fact<?>> plain, Meaning meaning) throws Refusal {
    List<Fact<?>> complete = new ArrayList<>();
    for (Fact<?> fact : plain) {
      complete.add(methodAndNotes.withMethod(fact, meaning));
    }
    return complete;
  }
}
