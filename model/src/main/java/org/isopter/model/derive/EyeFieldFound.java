package org.isopter.model.derive;

import java.util.List;
import java.util.Optional;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.isopter.model.answer.sight.FieldRegion;
import org.isopter.model.answer.sight.FieldResponse;
import org.isopter.model.catalogue.Acuities;
import org.isopter.model.catalogue.AcuityReading;
import org.isopter.model.catalogue.Fields;
import org.isopter.model.clinical.impairment.VisionImpairment;
import org.isopter.model.clinical.impairment.VisionImpairments;
import org.isopter.model.exam.ExamView;
import org.isopter.model.exam.EyeView;
import org.isopter.model.exam.Seen;
import org.isopter.model.value.Outcome;
import org.isopter.model.value.Site;

/**
 * The field of one eye: as tested, or lost whole because the eye sees no light.
 *
 * @param field what is seen in each region
 * @param from the facts that say so
 * @param tested whether the field was tested by confrontation
 */
record EyeFieldFound(Fields.Confrontation field, List<Seen<?>> from, boolean tested) {

  private static final Fields.Confrontation NOTHING =
      new Fields.Confrontation(
          Stream.of(FieldRegion.values())
              .collect(
                  Collectors.toMap(region -> region, any -> Outcome.found(FieldResponse.ABSENT))),
          Optional.empty(),
          Optional.empty());

  static Optional<EyeFieldFound> of(ExamView facts, Site site) {
    EyeView eye = facts.eye(site);
    return eye.seen(Fields.CONFRONTATION).findAny().isPresent()
        ? eye.only(Fields.CONFRONTATION)
            .map(seen -> new EyeFieldFound(seen.value(), List.of(seen), true))
        : blind(eye.seen(Acuities.DISTANCE).toList());
  }

  private static Optional<EyeFieldFound> blind(List<Seen<AcuityReading>> acuities) {
    return Optional.of(acuities)
        .filter(some -> !some.isEmpty() && some.stream().allMatch(EyeFieldFound::isNoLight))
        .map(some -> new EyeFieldFound(NOTHING, List.copyOf(some), false));
  }

  private static boolean isNoLight(Seen<AcuityReading> acuity) {
    return VisionImpairments.of(acuity.value())
        .value()
        .filter(category -> category.impairment() == VisionImpairment.BLINDNESS_NO_LIGHT)
        .isPresent();
  }

  /** An eye that sees no light makes a pattern only with a loss of its fellow that was tested. */
  static boolean isNews(EyeFieldFound one, EyeFieldFound other) {
    return (one.tested && other.tested)
        || (one.tested && one.isReduced())
        || (other.tested && other.isReduced());
  }

  private boolean isReduced() {
    return UncountedFields.isReduced(field);
  }
}
