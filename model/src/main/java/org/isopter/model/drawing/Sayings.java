package org.isopter.model.drawing;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.isopter.model.exam.Exam;
import org.isopter.model.exam.Fact;
import org.isopter.model.finding.Finding;
import org.isopter.model.text.FactText;
import org.isopter.model.value.Site;

/** What an examination says of an eye, for the words of a picture. */
final class Sayings {

  private final Exam exam;

  Sayings(Exam exam) {
    this.exam = exam;
  }

  /** Returns what is said of a finding in an eye; also that nothing is. */
  List<String> of(String label, Finding<?> finding, Site eye) {
    List<String> said = new ArrayList<>();
    for (Fact<?> fact : exam.facts()) {
      if (fact.finding() == finding && fact.site() == eye) {
        said.add(label + ": " + FactText.of(fact, exam.header().performed()));
      }
    }
    return said.isEmpty() ? List.of(label + ": not recorded") : said;
  }

  /** Returns the one value of a finding in an eye; of several none, for no picture is both. */
  <V> Optional<V> only(Finding<V> finding, Site eye) {
    List<Fact<V>> facts = exam.all(finding).at(eye).stream().toList();
    return facts.size() == 1 ? facts.get(0).outcome().ifFound() : Optional.empty();
  }

  /** Says whether several facts of a finding stand beside each other in an eye. */
  boolean areSeveral(Finding<?> finding, Site eye) {
    return exam.all(finding).at(eye).stream().count() > 1;
  }
}
