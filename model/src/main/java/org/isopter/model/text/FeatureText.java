package org.isopter.model.text;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import org.isopter.model.answer.pupil.DefectSide;
import org.isopter.model.answer.sight.Congruity;
import org.isopter.model.answer.sight.FieldBorder;
import org.isopter.model.answer.sight.MeridianDifference;
import org.isopter.model.answer.sight.MissedSide;
import org.isopter.model.answer.sight.Sparing;
import org.isopter.model.answer.tissue.GlobeState;
import org.isopter.model.catalogue.Colours;
import org.isopter.model.catalogue.Discs;
import org.isopter.model.catalogue.FieldFeatures;
import org.isopter.model.catalogue.Movements;
import org.isopter.model.catalogue.Pressures;
import org.isopter.model.catalogue.Pupils;
import org.isopter.model.catalogue.VisualFunctions;

/**
 * Features, comparisons and states in words: those of which the list word alone says too little.
 */
final class FeatureText {

  private FeatureText() {}

  static Optional<String> of(Object value) {
    if (value instanceof Pupils.Feature feature) {
      return Optional.of(SignText.sign(feature.feature(), feature.presence()));
    }
    if (value instanceof Discs.Sign sign) {
      return Optional.of(SignText.sign(sign.sign(), sign.presence()));
    }
    if (value instanceof Pupils.AfferentDefect defect) {
      return equivocal(defect);
    }
    if (value instanceof Colours.AcrossMeridian across) {
      return Optional.of(across(across));
    }
    if (value instanceof Pressures.Beyond beyond) {
      return Optional.of(beyond.beyond().word() + " " + PlainWords.quantity(beyond.limit()));
    }
    return motion(value);
  }

  private static Optional<String> motion(Object value) {
    if (value instanceof Movements.Saccades saccades) {
      String line = saccades.direction().map(way -> ", " + way.word() + " ones").orElse("");
      return Optional.of(PlainWords.concept(saccades.quality()) + line);
    }
    if (value instanceof VisualFunctions.Fixation fixation) {
      return Optional.of(fixation(fixation));
    }
    if (value instanceof FieldFeatures.Isopter isopter) {
      return Optional.of(isopter(isopter));
    }
    return state(value);
  }

  private static Optional<String> state(Object value) {
    if (value instanceof FieldBorder border) {
      return Optional.of(border.code().display().toLowerCase(Locale.ROOT));
    }
    if (value instanceof Sparing sparing) {
      return Optional.of(sparing == Sparing.SPARED ? "spared" : "lost with the rest");
    }
    if (value instanceof Congruity match) {
      return Optional.of(match == Congruity.CONGRUOUS ? "the eyes match" : "the eyes do not match");
    }
    if (value instanceof MissedSide side) {
      return Optional.of(side == MissedSide.NONE ? "neither" : "the person's " + side.word());
    }
    return value instanceof GlobeState globe ? Optional.of(globe(globe)) : Optional.empty();
  }

  /** A defect that was decided is said by its parts. */
  private static Optional<String> equivocal(Pupils.AfferentDefect defect) {
    return defect.side() == DefectSide.EQUIVOCAL
        ? Optional.of(
            "equivocal"
                + defect
                    .suspected()
                    .map(eye -> ", the " + eye.word() + " eye suspected")
                    .orElse(""))
        : Optional.empty();
  }

  private static String across(Colours.AcrossMeridian across) {
    String what = PlainWords.concept(across.quality());
    return across.difference() == MeridianDifference.NONE
        ? what + " alike in both halves"
        : what + " " + across.difference().code().display().toLowerCase(Locale.ROOT);
  }

  private static String fixation(VisualFunctions.Fixation fixation) {
    List<String> words = new ArrayList<>();
    fixation.central().ifPresent(yes -> words.add(yes ? "central" : "not central"));
    fixation.steady().ifPresent(yes -> words.add(yes ? "steady" : "not steady"));
    fixation.maintained().ifPresent(yes -> words.add(yes ? "maintained" : "not maintained"));
    fixation.follows().ifPresent(yes -> words.add(yes ? "follows" : "does not follow"));
    return String.join(", ", words);
  }

  private static String isopter(FieldFeatures.Isopter isopter) {
    List<String> words = new ArrayList<>();
    isopter
        .extents()
        .forEach(
            (way, far) ->
                words.add(way.name().toLowerCase(Locale.ROOT) + " to " + PlainWords.quantity(far)));
    String seen = words.isEmpty() ? "no extent recorded" : String.join(", ", words);
    return isopter.stimulus().code().display() + ": " + seen;
  }

  private static String globe(GlobeState state) {
    return switch (state) {
      case PRESENT -> "there";
      case SHRUNKEN -> "shrunken and sightless";
      case REMOVED -> "none";
      case PROSTHESIS -> "none, a prosthesis worn";
    };
  }
}
