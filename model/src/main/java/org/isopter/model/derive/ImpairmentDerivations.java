package org.isopter.model.derive;

import java.util.List;
import java.util.Optional;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.isopter.model.answer.tissue.GlobeState;
import org.isopter.model.catalogue.Acuities;
import org.isopter.model.catalogue.AcuityReading;
import org.isopter.model.catalogue.Globes;
import org.isopter.model.clinical.impairment.PersonImpairment;
import org.isopter.model.clinical.impairment.PresentingAcuity;
import org.isopter.model.clinical.impairment.VisionImpairments;
import org.isopter.model.clinical.statement.Answer;
import org.isopter.model.clinical.statement.Statement;
import org.isopter.model.exam.ExamView;
import org.isopter.model.exam.Seen;
import org.isopter.model.value.Site;

/** The category of vision impairment of each eye, and of the person by the better eye. */
final class ImpairmentDerivations {

  private ImpairmentDerivations() {}

  static Stream<Derived> of(ExamView facts) {
    return Stream.concat(
        Site.EACH_EYE.stream().flatMap(eye -> eye(facts, eye).stream()), person(facts).stream());
  }

  private static Optional<Derived> eye(ExamView facts, Site eye) {
    List<Seen<AcuityReading>> seen = facts.eye(eye).seen(Acuities.DISTANCE).toList();
    return Optional.of(seen)
        .filter(some -> !some.isEmpty())
        .map(some -> Derived.of(category(values(some)), eye, List.copyOf(some)));
  }

  /** An acuity that cannot be told to be the presenting one gives no category. */
  private static Statement category(List<AcuityReading> readings) {
    Answer<AcuityReading> presenting = PresentingAcuity.of(readings);
    return presenting
        .value()
        .map(reading -> VisionImpairments.of(reading).statement())
        .orElseGet(presenting::statement);
  }

  private static Optional<Derived> person(ExamView facts) {
    List<Seen<AcuityReading>> all = facts.seen(Acuities.DISTANCE).toList();
    List<Seen<GlobeState>> gone =
        facts.eyes().flatMap(eye -> eye.seen(Globes.STATE, GlobeState::isSightless)).toList();
    PersonImpairment person =
        new PersonImpairment(
            values(facts.eye(Site.RIGHT).seen(Acuities.DISTANCE).toList()),
            values(facts.eye(Site.LEFT).seen(Acuities.DISTANCE).toList()),
            values(facts.eye(Site.BOTH).seen(Acuities.DISTANCE).toList()),
            gone.stream().map(Seen::site).collect(Collectors.toSet()));
    List<Seen<?>> from = Stream.<Seen<?>>concat(all.stream(), gone.stream()).toList();
    return all.isEmpty()
        ? Optional.empty()
        : Optional.of(Derived.of(person.category().statement(), Site.BOTH, from));
  }

  private static List<AcuityReading> values(List<Seen<AcuityReading>> seen) {
    return seen.stream().map(Seen::value).toList();
  }
}
