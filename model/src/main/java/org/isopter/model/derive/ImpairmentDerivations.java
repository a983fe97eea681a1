package org.isopter.model.derive;

import java.util.ArrayList;
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
import org.isopter.model.clinical.impairment.VisionImpairment;
import org.isopter.model.clinical.impairment.VisionImpairments;
import org.isopter.model.clinical.statement.Answer;
import org.isopter.model.exam.ExamView;
import org.isopter.model.exam.Seen;
import org.isopter.model.value.Site;

/** The category of vision impairment of each eye, and of the person by the better eye. */
final class ImpairmentDerivations {

  /** The category that a narrow field may give by itself. */
  private static final VisionImpairment BY_FIELD = VisionImpairment.BLINDNESS_TO_ONE_SIXTIETH;

  private ImpairmentDerivations() {}

  static Stream<Derived> of(ExamView facts) {
    return Stream.concat(
        Site.EACH_EYE.stream().flatMap(eye -> eye(facts, eye).stream()), person(facts).stream());
  }

  private static Optional<Derived> eye(ExamView facts, Site eye) {
    List<Seen<AcuityReading>> seen = facts.eye(eye).seen(Acuities.DISTANCE).toList();
    return Optional.of(seen)
        .filter(some -> !some.isEmpty())
        .map(
            some -> besideField(category(values(some)), eye, some, UncountedFields.of(facts, eye)));
  }

  /** An acuity that cannot be told to be the presenting one gives no category. */
  private static Answer<?> category(List<AcuityReading> readings) {
    Answer<AcuityReading> presenting = PresentingAcuity.of(readings);
    return presenting.value().<Answer<?>>map(VisionImpairments::of).orElse(presenting);
  }

  /** A category by acuity alone may reassure, and be wrong, where a loss of field is recorded. */
  private static Derived besideField(
      Answer<?> category, Site site, List<? extends Seen<?>> from, List<Seen<?>> fields) {
    boolean open =
        category
            .value()
            .filter(VisionImpairments.Category.class::isInstance)
            .map(VisionImpairments.Category.class::cast)
            .filter(one -> one.impairment().compareTo(BY_FIELD) < 0)
            .isPresent();
    List<Seen<?>> used = new ArrayList<>(from);
    if (!open || fields.isEmpty()) {
      return Derived.of(category.statement(), site, used);
    }
    used.addAll(fields);
    return Derived.of(Wordings.and(category.statement(), UncountedFields.SENTENCE), site, used);
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
        : Optional.of(
            besideField(person.category(), Site.BOTH, from, UncountedFields.ofEither(facts)));
  }

  private static List<AcuityReading> values(List<Seen<AcuityReading>> seen) {
    return seen.stream().map(Seen::value).toList();
  }
}
