package org.isopter.model.derive;

import java.util.ArrayList;
import java.util.Iterator;
import java.util.List;
import java.util.Optional;
import java.util.function.Predicate;
import java.util.stream.IntStream;
import org.isopter.model.exam.Exam;
import org.isopter.model.exam.Fact;
import org.isopter.model.exam.FactKey;
import org.isopter.model.finding.Finding;
import org.isopter.model.value.Site;

/** The values that were found in an examination; what was not done is not among them. */
final class SeenFacts {

  private final Exam exam;
  private final List<FactKey> keys;

  SeenFacts(Exam exam) {
    this.exam = exam;
    this.keys = exam.keys();
  }

  /** Returns what was found, in the order of the record. */
  <V> List<Seen<V>> all(Finding<V> finding) {
    Iterator<FactKey> names = names(finding).iterator();
    List<Seen<V>> found = new ArrayList<>();
    for (Fact<V> fact : exam.all(finding)) {
      FactKey key = names.next();
      fact.outcome()
          .ifFound()
          .ifPresent(value -> found.add(new Seen<>(key, fact.site(), fact.method(), value)));
    }
    return found;
  }

  /** Returns what was found at a site. */
  <V> List<Seen<V>> at(Finding<V> finding, Site site) {
    return all(finding).stream().filter(seen -> seen.site() == site).toList();
  }

  /** Returns the value found at a site; of several none, for nothing tells which one counts. */
  <V> Optional<Seen<V>> only(Finding<V> finding, Site site) {
    return only(finding, site, any -> true);
  }

  /** Returns the one value of a kind that was found at a site; of several none. */
  <V> Optional<Seen<V>> only(Finding<V> finding, Site site, Predicate<V> kind) {
    List<Seen<V>> found =
        at(finding, site).stream().filter(seen -> kind.test(seen.value())).toList();
    return found.size() == 1 ? Optional.of(found.get(0)) : Optional.empty();
  }

  private List<FactKey> names(Finding<?> finding) {
    return IntStream.range(0, keys.size())
        .filter(i -> exam.facts().get(i).finding() == finding)
        .mapToObj(keys::get)
        .toList();
  }
}
