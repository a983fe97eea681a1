package org.isopter.model.clinical.pupil;

import java.util.Optional;
import org.isopter.model.answer.pupil.PupilResponse;
import org.isopter.model.clinical.statement.Answer;
import org.isopter.model.clinical.statement.Certainty;
import org.isopter.model.clinical.statement.Sources;
import org.isopter.model.clinical.statement.StatementBuilder;

/** Light-near dissociation: a pupil that answers a near target better than light. */
public final class LightNearDissociation {

  private LightNearDissociation() {}

  /**
   * Says whether one pupil answers a near target better than light.
   *
   * <p>Withheld where the words do not say which is better: between a sluggish and a tonic answer,
   * and where a pupil is only said to react.
   *
   * @param light the direct response
   * @param near the response to a near target
   */
  public static Answer<Boolean> of(PupilResponse light, PupilResponse near) {
    return nearIsBetter(light, near)
        .map(better -> given(better, light, near))
        .orElseGet(
            () ->
                topic("pupils.light-near", light, near)
                    .withheld("Which answer is better cannot be told from the words."));
  }

  /** That near is no better is a kind of its own: it is no sign. */
  private static Answer<Boolean> given(boolean better, PupilResponse light, PupilResponse near) {
    String kind = better ? "pupils.light-near" : "pupils.near-no-better";
    return topic(kind, light, near).given(better, Certainty.COMPUTED, words(better));
  }

  private static StatementBuilder topic(String kind, PupilResponse light, PupilResponse near) {
    return StatementBuilder.of(
        kind,
        Sources.PUPIL_WIRING,
        "direct response " + light.word(),
        "near response " + near.word());
  }

  private static String words(boolean better) {
    return better
        ? "The pupil answers a near target better than light: light-near dissociation."
        : "The pupil answers a near target no better than light.";
  }

  private static Optional<Boolean> nearIsBetter(PupilResponse light, PupilResponse near) {
    if (least(near) > most(light)) {
      return Optional.of(true);
    }
    boolean same = light == near && light != PupilResponse.REACTIVE;
    return same || most(near) <= least(light) ? Optional.of(false) : Optional.empty();
  }

  /** The words leave a span: sluggish and tonic are not ordered, reactive may be any of three. */
  private static int least(PupilResponse response) {
    return switch (response) {
      case ABSENT -> 0;
      case SLUGGISH, TONIC, REACTIVE -> 1;
      case BRISK -> 3;
    };
  }

  private static int most(PupilResponse response) {
    return switch (response) {
      case ABSENT -> 0;
      case SLUGGISH, TONIC -> 2;
      case REACTIVE, BRISK -> 3;
    };
  }
}
