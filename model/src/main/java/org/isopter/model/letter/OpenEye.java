package org.isopter.model.letter;

import java.math.BigDecimal;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import org.isopter.model.answer.pupil.PupilFeature;
import org.isopter.model.answer.pupil.PupilOutline;
import org.isopter.model.answer.tissue.AnteriorSign;
import org.isopter.model.answer.tissue.GlobeState;
import org.isopter.model.answer.tissue.Presence;
import org.isopter.model.catalogue.Globes;
import org.isopter.model.catalogue.Pressures;
import org.isopter.model.catalogue.Pupils;
import org.isopter.model.catalogue.Segments;
import org.isopter.model.exam.ExamView;
import org.isopter.model.exam.EyeView;
import org.isopter.model.text.PlainWords;
import org.isopter.model.value.Quantity;

/**
 * Signs that an eye may be open after an injury, two of them in one eye; each alone is common after
 * an operation, and all of them in an eye that has shrunken (common practice, no source).
 */
final class OpenEye {

  /** Below this an eye is soft, in mmHg. */
  private static final BigDecimal SOFT = BigDecimal.valueOf(6);

  private OpenEye() {}

  static Optional<String> of(ExamView exam) {
    List<String> eyes =
        exam.eyes()
            .filter(eye -> !eye.has(Globes.STATE, GlobeState::isSightless))
            .filter(eye -> signs(eye).count() > 1)
            .map(
                eye ->
                    PlainWords.eye(eye.site()) + " (" + PlainWords.list(signs(eye).toList()) + ")")
            .toList();
    return eyes.isEmpty()
        ? Optional.empty()
        : Optional.of(
            "A penetrating injury, of which two such signs may tell, is on the list: "
                + PlainWords.list(eyes)
                + UrgentWhenNew.unknown("there was an injury"));
  }

  private static Stream<String> signs(EyeView eye) {
    boolean odd =
        eye.has(Pupils.OUTLINE, outline -> outline != PupilOutline.ROUND)
            || eye.has(
                Pupils.FEATURE,
                one -> one.feature() == PupilFeature.CORECTOPIA && isThere(one.presence()));
    boolean soft =
        eye.has(Pressures.INTRAOCULAR, OpenEye::isSoft)
            || eye.has(Pressures.BEYOND, past -> !past.isAbove() && isSoft(past.limit()));
    return Stream.of(
            sign(odd, "a pupil that is not round or not central"),
            sign(soft, "a pressure below 6 mmHg"),
            sign(front(eye, AnteriorSign.SHALLOW_ANTERIOR_CHAMBER), "a shallow chamber"),
            sign(front(eye, AnteriorSign.HYPHAEMA), "hyphaema"))
        .flatMap(Optional::stream);
  }

  private static Optional<String> sign(boolean there, String words) {
    return there ? Optional.of(words) : Optional.empty();
  }

  private static boolean isSoft(Quantity pressure) {
    return pressure.value().compareTo(SOFT) < 0;
  }

  private static boolean front(EyeView eye, AnteriorSign sign) {
    return eye.has(Segments.ANTERIOR, one -> one.sign() == sign && isThere(one.presence()));
  }

  private static boolean isThere(Presence presence) {
    return presence != Presence.ABSENT;
  }
}
