package org.isopter.model.exam;

import java.util.List;
import java.util.Optional;
import java.util.function.Predicate;
import java.util.stream.Stream;
import org.isopter.model.finding.Finding;
import org.isopter.model.value.Absence;
import org.isopter.model.value.Site;

/**
 * What an examination states of one eye, or of both together.
 *
 * @param exam the whole examination
 * @param site which eye, or both together
 */
public record EyeView(ExamView exam, Site site) {

  /** Returns the fellow eye; both eyes are their own fellow. */
  public EyeView fellow() {
    return at(site.fellow());
  }

  /** Returns the same examination at another site. */
  public EyeView at(Site other) {
    return exam.eye(other);
  }

  /** Returns every fact here under its name, the absent ones too, in the order of the record. */
  public Stream<ExamView.Named> entries() {
    return exam.entries().filter(named -> named.fact().site() == site);
  }

  /** Returns all facts of a finding here, the absent ones too, in the order of the record. */
  public <V> Stream<Fact<V>> facts(Finding<V> finding) {
    return exam.facts(finding).filter(fact -> fact.site() == site);
  }

  /** Says whether nothing is stated of a finding here, not even that it was not done. */
  public boolean isSilentOn(Finding<?> finding) {
    return exam.isSilentOn(finding) || facts(finding).findAny().isEmpty();
  }

  /** Returns why a finding has no value here; empty where it has one, or where nothing is said. */
  public Optional<Absence> absence(Finding<?> finding) {
    return !exam.seen(finding, site).isEmpty()
        ? Optional.empty()
        : facts(finding).map(Fact::outcome).flatMap(o -> o.ifAbsent().stream()).findFirst();
  }

  /** Returns the values of a finding, in the order of the record. */
  public <V> Stream<Seen<V>> seen(Finding<V> finding) {
    List<Seen<V>> found = exam.seen(finding, site);
    return found.isEmpty() ? Stream.empty() : found.stream();
  }

  /** Returns the values of some kind. */
  public <V> Stream<Seen<V>> seen(Finding<V> finding, Predicate<? super V> which) {
    return seen(finding).filter(one -> which.test(one.value()));
  }

  /** Says whether a value of some kind was found. */
  public <V> boolean has(Finding<V> finding, Predicate<? super V> which) {
    return exam.seen(finding, site).stream().anyMatch(one -> which.test(one.value()));
  }

  /** Returns the one value; of several none, for nothing tells which one counts. */
  public <V> Optional<Seen<V>> only(Finding<V> finding) {
    return only(finding, any -> true);
  }

  /** Returns the one value of a kind; of several none. */
  public <V> Optional<Seen<V>> only(Finding<V> finding, Predicate<? super V> which) {
    Optional<Seen<V>> only = Optional.empty();
    for (Seen<V> one : exam.seen(finding, site)) {
      if (which.test(one.value())) {
        if (only.isPresent()) {
          return Optional.empty();
        }
        only = Optional.of(one);
      }
    }
    return only;
  }

  /** Returns the first value of some kind that was found here at the time of another. */
  public <V> Optional<Seen<V>> beside(
      Seen<?> other, Finding<V> finding, Predicate<? super V> which) {
    return seen(finding, which).filter(one -> one.isWith(other)).findFirst();
  }
}
