package org.isopter.model.check;

import java.util.Set;
import java.util.stream.Stream;
import org.isopter.model.answer.pupil.DefectSide;
import org.isopter.model.answer.pupil.PupilResponse;
import org.isopter.model.catalogue.Acuities;
import org.isopter.model.catalogue.Pupils;
import org.isopter.model.check.sight.Sight;
import org.isopter.model.exam.EyeView;
import org.isopter.model.exam.Seen;
import org.isopter.model.finding.Finding;
import org.isopter.model.value.Site;

/**
 * Questions about the pupil pathways that several rules ask. Light in an eye travels in its own
 * nerve and reaches both pupils; a tonic or sluggish response proves neither side of a question.
 */
final class Reflexes {

  /** The responses that show that every part of the way works. */
  static final Set<PupilResponse> WORKS = Set.of(PupilResponse.BRISK, PupilResponse.REACTIVE);

  private Reflexes() {}

  static Stream<EyeView> eyes(EyeView both) {
    return Site.EACH_EYE.stream().map(both::at);
  }

  static DefectSide side(EyeView eye) {
    return eye.site() == Site.RIGHT ? DefectSide.RIGHT : DefectSide.LEFT;
  }

  static boolean works(EyeView eye, Finding<PupilResponse> response, Seen<?> at) {
    return eye.beside(at, response, WORKS::contains).isPresent();
  }

  static boolean fails(EyeView eye, Finding<PupilResponse> response, Seen<?> at) {
    return eye.beside(at, response, PupilResponse.ABSENT::equals).isPresent();
  }

  /**
   * Says whether light in an eye is shown to reach no pupil although both could move: its own fails
   * to light in it and answers light in the fellow.
   */
  static boolean isAfferentBlock(EyeView eye, Seen<?> at) {
    return fails(eye, Pupils.DIRECT, at)
        && works(eye, Pupils.CONSENSUAL, at)
        && works(eye.fellow(), Pupils.DIRECT, at);
  }

  static boolean isBlindBeside(EyeView eye, Seen<?> at) {
    return eye.beside(at, Acuities.DISTANCE, Sight::isNoLight).isPresent();
  }

  /** Returns the breach of a fact by the acuity of an eye without light perception. */
  static Breach besideAcuity(Seen<?> fact, EyeView blind) {
    return Breach.of(fact, blind.beside(fact, Acuities.DISTANCE, Sight::isNoLight).orElseThrow());
  }
}
