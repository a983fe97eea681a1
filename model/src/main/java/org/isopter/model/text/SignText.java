package org.isopter.model.text;

import java.util.Map;
import java.util.Optional;
import org.isopter.model.answer.movement.Alignment;
import org.isopter.model.answer.movement.FixationDistance;
import org.isopter.model.answer.tissue.Presence;
import org.isopter.model.catalogue.Alignments;
import org.isopter.model.catalogue.Control;
import org.isopter.model.catalogue.Drops;
import org.isopter.model.catalogue.Pupils;
import org.isopter.model.catalogue.Segments;
import org.isopter.model.value.Concept;
import org.isopter.model.value.Quantity;

/** Values in words that are no list of parts: signs, drops, deviations. */
final class SignText {

  /** Signs that are recorded as an adjective. */
  private static final Map<String, String> NOUNS = Map.of("tilted", "tilt", "crowded", "crowding");

  private SignText() {}

  static Optional<String> of(Object value) {
    if (value instanceof Segments.Sign<?> sign) {
      return Optional.of(sign((Concept) sign.sign(), sign.presence()));
    }
    if (value instanceof Drops.Dilation drops) {
      return Optional.of(drops(drops.drug(), drops.strength()));
    }
    if (value instanceof Pupils.Size size) {
      return Optional.of(
          PlainWords.quantity(size.diameter()) + " in " + size.lighting().word() + " light");
    }
    if (value instanceof Drops.DrugTest test) {
      return Optional.of(drugTest(test));
    }
    return value instanceof Alignments.Deviation deviation
        ? Optional.of(deviation(deviation))
        : FeatureText.of(value);
  }

  static String sign(Concept sign, Presence presence) {
    String name = NOUNS.getOrDefault(sign.word(), PlainWords.concept(sign));
    return switch (presence) {
      case PRESENT -> name + " present";
      case ABSENT -> "no " + name;
      case EQUIVOCAL -> name + " equivocal";
    };
  }

  private static String drops(Concept drug, Optional<Quantity> strength) {
    return PlainWords.concept(drug) + strength.map(q -> " " + PlainWords.quantity(q)).orElse("");
  }

  private static String drugTest(Drops.DrugTest test) {
    return PlainWords.concept(test.effect())
        + test.waited().map(q -> " " + PlainWords.quantity(q)).orElse("")
        + " after "
        + drops(test.drug(), test.strength())
        + test.before().map(q -> ", " + PlainWords.quantity(q) + " before").orElse("")
        + test.after().map(q -> ", " + PlainWords.quantity(q) + " after").orElse("");
  }

  private static String deviation(Alignments.Deviation deviation) {
    String control = deviation.control().map(SignText::control).orElse("");
    return control
        + alignment(deviation.alignment())
        + deviation.amount().map(q -> ", " + PlainWords.quantity(q)).orElse("")
        + deviation.fixation().map(SignText::fixation).orElse("");
  }

  private static String control(Control control) {
    return PlainWords.concept(control) + " ";
  }

  private static String alignment(Alignment alignment) {
    return switch (alignment) {
      case STRAIGHT -> "no movement on covering";
      case ESO -> "inward deviation";
      case EXO -> "outward deviation";
      case RIGHT_HYPER -> "deviation with the right eye higher";
      case LEFT_HYPER -> "deviation with the left eye higher";
    };
  }

  private static String fixation(FixationDistance far) {
    return far == FixationDistance.FAR ? ", at distance" : ", at near";
  }
}
