package org.isopter.model.check;

import java.util.Optional;
import java.util.function.Predicate;
import java.util.stream.Stream;
import org.isopter.model.exam.Exam;
import org.isopter.model.exam.Fact;
import org.isopter.model.finding.Finding;
import org.isopter.model.value.Site;

/**
 * What an examination says of one eye, or of both together.
 *
 * @param exam the examination
 * @param site the eye
 */
record Eye(Exam exam, Site site) {

  Eye fellow() {
    return at(site.fellow());
  }

  Eye at(Site other) {
    return new Eye(exam, other);
  }

  /** Returns all facts of a finding here, the absent ones too. */
  <V> Stream<Fact<V>> facts(Finding<V> finding) {
    return exam.all(finding).at(site).stream();
  }

  /** Says whether nothing is stated of a finding here, not even that it was not done. */
  boolean isSilentOn(Finding<?> finding) {
    return exam.all(finding).at(site).isEmpty();
  }

  /** Returns the facts with a value. */
  <V> Stream<Seen<V>> seen(Finding<V> finding) {
    return facts(finding)
        .flatMap(fact -> fact.outcome().ifFound().map(value -> new Seen<>(fact, value)).stream());
  }

  /** Returns the facts with a value of some kind. */
  <V> Stream<Seen<V>> seen(Finding<V> finding, Predicate<? super V> which) {
    return seen(finding).filter(one -> which.test(one.value()));
  }

  /** Returns the first fact of some kind that was found here at the time of another. */
  <V> Optional<Seen<V>> beside(Seen<?> other, Finding<V> finding, Predicate<? super V> which) {
    return seen(finding, which).filter(one -> one.isWith(other)).findFirst();
  }

  /** Returns a breach for each fact of one kind beside which there is a fact of another kind. */
  <A, B> Stream<Breach> clash(
      Finding<A> where, Predicate<? super A> which, Finding<B> other, Predicate<? super B> what) {
    return seen(where, which)
        .flatMap(one -> beside(one, other, what).map(two -> Breach.of(one, two)).stream());
  }
}
