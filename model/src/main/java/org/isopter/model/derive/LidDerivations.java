package org.isopter.model.derive;

import java.util.Map;
import java.util.Optional;
import java.util.stream.Stream;
import org.isopter.model.catalogue.Alignments;
import org.isopter.model.catalogue.Lids;
import org.isopter.model.clinical.pupil.SideDifference;
import org.isopter.model.exam.ExamView;
import org.isopter.model.exam.Seen;
import org.isopter.model.finding.Finding;
import org.isopter.model.value.Quantity;
import org.isopter.model.value.Site;
import org.isopter.model.value.Unit;

/** What follows from the lids and the orbits: how far the sides differ. */
final class LidDerivations {

  private LidDerivations() {}

  static Stream<Derived> of(ExamView facts) {
    return Stream.concat(lids(facts), protrusion(facts).stream());
  }

  private static Stream<Derived> lids(ExamView facts) {
    return Stream.of(
            Map.entry(Lids.MARGIN_REFLEX, "margin reflex distance"),
            Map.entry(Lids.FISSURE, "height of the palpebral fissure"),
            Map.entry(Lids.LEVATOR, "levator function"))
        .flatMap(measure -> difference(facts, measure.getKey(), measure.getValue()).stream());
  }

  /** Readings with different distances between the rims do not compare. */
  private static Optional<Derived> protrusion(ExamView facts) {
    return facts
        .eye(Site.RIGHT)
        .only(Alignments.PROTRUSION)
        .flatMap(
            right ->
                facts
                    .eye(Site.LEFT)
                    .only(Alignments.PROTRUSION)
                    .filter(left -> left.value().base().equals(right.value().base()))
                    .map(left -> protrusion(right, left)));
  }

  private static Derived protrusion(
      Seen<Alignments.Protrusion> right, Seen<Alignments.Protrusion> left) {
    SideDifference apart =
        SideDifference.of(right.value().protrusion().value(), left.value().protrusion().value());
    return Derived.of(apart.isUnusualProtrusion().statement(), Site.BOTH, right, left)
        .value(Optional.of(apart.difference()), Unit.MILLIMETRE);
  }

  private static Optional<Derived> difference(
      ExamView facts, Finding<Quantity> finding, String measure) {
    return facts
        .eye(Site.RIGHT)
        .only(finding)
        .flatMap(
            right ->
                facts.eye(Site.LEFT).only(finding).map(left -> difference(right, left, measure)));
  }

  private static Derived difference(Seen<Quantity> right, Seen<Quantity> left, String measure) {
    SideDifference apart = SideDifference.of(right.value().value(), left.value().value());
    return Derived.of(apart.lids(measure), Site.BOTH, right, left)
        .value(Optional.of(apart.difference()), Unit.MILLIMETRE);
  }
}
