package org.isopter.model.compare;

import java.util.ArrayList;
import java.util.IdentityHashMap;
import java.util.Iterator;
import java.util.List;
import java.util.Optional;
import java.util.function.UnaryOperator;
import org.isopter.model.exam.Exam;
import org.isopter.model.exam.ExamView;
import org.isopter.model.exam.Fact;
import org.isopter.model.exam.Measurement;

/**
 * Finds to each fact of one examination the fact of another that is of the same measurement: first
 * in every respect, then by whatever technique, then one that was not done to one that was. What
 * was found is never set against what was not while a value is left that it may be compared with.
 *
 * <p>A looser match is made only where exactly one fact is left on each side, so that nothing is
 * paired by chance.
 */
final class Matching {

  /** Facts of two examinations that belong together; one of them may be missing. */
  record Pair(Optional<Fact<?>> before, Optional<Fact<?>> now, boolean sameTechnique) {}

  private final List<Fact<?>> before;
  private final IdentityHashMap<Fact<?>, Pair> found = new IdentityHashMap<>();
  private final List<Fact<?>> now;

  private Matching(Exam earlier, Exam later) {
    this.before = new ArrayList<>(facts(earlier));
    this.now = new ArrayList<>(facts(later));
  }

  /** Returns the pairs, those of the later examination first, in the order of the records. */
  static List<Pair> of(Exam earlier, Exam later) {
    Matching matching = new Matching(earlier, later);
    matching.repeated(true);
    matching.single(Measurement::anyTechnique, false);
    matching.repeated(false);
    matching.single(one -> one.anyTechnique().anyConditions(), true);
    return matching.pairs(later);
  }

  private static List<Fact<?>> facts(Exam exam) {
    return exam.view().entries().<Fact<?>>map(ExamView.Named::fact).toList();
  }

  /** The first of several readings meets the first, the second the second. */
  private void repeated(boolean alike) {
    for (Iterator<Fact<?>> each = now.iterator(); each.hasNext(); ) {
      Fact<?> fact = each.next();
      Optional<Fact<?>> same = first(fact, alike);
      if (same.isPresent()) {
        pair(same.get(), fact, true);
        each.remove();
      }
    }
  }

  private Optional<Fact<?>> first(Fact<?> wanted, boolean alike) {
    Measurement measurement = Measurement.of(wanted).anyTime();
    return before.stream()
        .<Fact<?>>map(fact -> fact)
        .filter(fact -> (isFound(fact) == isFound(wanted)) == alike)
        .filter(fact -> Measurement.of(fact).anyTime().equals(measurement))
        .findFirst();
  }

  /**
   * Pairs a fact with the only one of the other examination, whose result is of the wanted kind.
   */
  private void single(UnaryOperator<Measurement> loosened, boolean oneAbsent) {
    for (Fact<?> fact : List.copyOf(now)) {
      Measurement wanted = loosened.apply(Measurement.of(fact).anyTime());
      List<Fact<?>> here = alike(now, loosened, wanted, isFound(fact));
      List<Fact<?>> there = alike(before, loosened, wanted, isFound(fact) != oneAbsent);
      if (here.size() == 1 && there.size() == 1) {
        pair(there.get(0), fact, oneAbsent);
        remove(now, fact);
      }
    }
  }

  private static List<Fact<?>> alike(
      List<Fact<?>> facts, UnaryOperator<Measurement> loosened, Measurement wanted, boolean found) {
    return facts.stream()
        .filter(fact -> isFound(fact) == found)
        .filter(fact -> loosened.apply(Measurement.of(fact).anyTime()).equals(wanted))
        .toList();
  }

  private static boolean isFound(Fact<?> fact) {
    return fact.panel().isPresent();
  }

  private void pair(Fact<?> earlier, Fact<?> later, boolean sameTechnique) {
    found.put(later, new Pair(Optional.of(earlier), Optional.of(later), sameTechnique));
    remove(before, earlier);
  }

  @SuppressWarnings("ReferenceEquality") // Two equal readings are still two.
  private static void remove(List<Fact<?>> facts, Fact<?> gone) {
    facts.removeIf(fact -> fact == gone);
  }

  private List<Pair> pairs(Exam later) {
    List<Pair> pairs = new ArrayList<>();
    for (Fact<?> fact : facts(later)) {
      Pair alone = new Pair(Optional.empty(), Optional.of(fact), true);
      pairs.add(found.getOrDefault(fact, alone));
    }
    before.forEach(fact -> pairs.add(new Pair(Optional.of(fact), Optional.empty(), true)));
    return pairs;
  }
}
