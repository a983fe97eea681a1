package org.isopter.model.drawing;

import java.util.List;
import java.util.Optional;
import org.isopter.model.exam.ExamView;
import org.isopter.model.exam.EyeView;
import org.isopter.model.exam.Fact;
import org.isopter.model.finding.Finding;
import org.isopter.model.text.FactText;
import org.isopter.model.value.Site;

/**
 * What an examination says of an eye, for the words of a picture.
 *
 * @param exam the examination
 */
record Sayings(ExamView exam) {

  /** Returns what is said of a finding in an eye; also that nothing is. */
  List<String> of(String label, Finding<?> finding, Site site) {
    EyeView eye = exam.eye(site);
    return eye.isSilentOn(finding)
        ? List.of(label + ": not recorded")
        : eye.facts(finding).map(fact -> label + ": " + words(fact)).toList();
  }

  private String words(Fact<?> fact) {
    return FactText.of(fact, exam.exam().header().performed());
  }

  /**
   * Returns the one value of a finding in an eye; of several none, for no picture is both, and none
   * where it was also said that it was not done.
   */
  <V> Optional<V> only(Finding<V> finding, Site eye) {
    return areSeveral(finding, eye)
        ? Optional.empty()
        : exam.eye(eye).only(finding).map(seen -> seen.value());
  }

  /** Says whether several facts of a finding stand beside each other in an eye. */
  boolean areSeveral(Finding<?> finding, Site eye) {
    return exam.eye(eye).facts(finding).count() > 1;
  }
}
