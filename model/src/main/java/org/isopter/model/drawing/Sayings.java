package org.isopter.model.drawing;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.isopter.model.answer.tissue.GlobeState;
import org.isopter.model.catalogue.Globes;
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

  /** Returns what is said of a finding in an eye; also that nothing is, where there is an eye. */
  List<String> of(String label, Finding<?> finding, Site site) {
    List<String> said = recorded(label, finding, site);
    return said.isEmpty() && !isGone(site) ? List.of(label + ": not recorded") : said;
  }

  /** Returns what is said of a finding in an eye. */
  List<String> recorded(String label, Finding<?> finding, Site site) {
    EyeView eye = exam.eye(site);
    return eye.isSilentOn(finding)
        ? List.of()
        : eye.facts(finding).map(fact -> label + ": " + words(fact)).toList();
  }

  /** Returns the same of what is drawn, and that of several results none is. */
  List<String> ofDrawn(String label, Finding<?> finding, Site site) {
    List<String> said = new ArrayList<>(of(label, finding, site));
    if (areSeveral(finding, site)) {
      said.add("More than one result: none of them is drawn");
    }
    return said;
  }

  /** Returns what is said of whether there is an eye. */
  List<String> globe(Site site) {
    return recorded("Eye in the socket", Globes.STATE, site);
  }

  /** Returns the mark for what is not known of an eye, or cannot be, because there is none. */
  String unknown(Site site) {
    return isGone(site) ? "\u2013" : "?";
  }

  /** Says whether it was recorded that there is no eye. */
  boolean isGone(Site site) {
    return site != Site.BOTH && only(Globes.STATE, site).filter(GlobeState::isGone).isPresent();
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
