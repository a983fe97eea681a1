package org.isopter.model.check;

import static org.isopter.model.check.ConsistencyRule.contradictory;
import static org.isopter.model.check.ConsistencyRule.implausible;
import static org.isopter.model.check.ConsistencyRule.impossible;
import static org.isopter.model.check.Reflexes.WORKS;

import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import org.isopter.model.answer.pupil.DefectSide;
import org.isopter.model.answer.pupil.PupilResponse;
import org.isopter.model.catalogue.Pupils;
import org.isopter.model.exam.EyeView;
import org.isopter.model.exam.Seen;

/** Rules about the light responses, the near response and the afferent defect. */
final class PupilRules {

  static final String WIRING = "pupil pathways: Trobe; NOVEL, University of Utah";

  private PupilRules() {}

  static List<ConsistencyRule> all() {
    return List.of(
        litEyeReachesOnePupil(),
        answersFellowOnly(),
        defectOnWrongSide(),
        noDefectBesideBlockedEye(),
        nearLostLightKept());
  }

  private static ConsistencyRule litEyeReachesOnePupil() {
    return impossible("light-reaches-one-pupil")
        .what("Light in one eye moves only its own pupil, although the other pupil can move.")
        .why(
            "Light in an eye reaches both pupils alike; where the consensual response fails, the"
                + " pupil that is watched cannot move to light in its own eye either.")
        .source(WIRING)
        .on(Pupils.CONSENSUAL, Pupils.DIRECT)
        .wanted("a consensual response where both direct responses are good")
        .suggest("the eye of a consensual response is the one that is watched: check the sides")
        .eachEye(
            eye ->
                eye.seen(Pupils.CONSENSUAL, PupilResponse.ABSENT::equals)
                    .flatMap(
                        absent ->
                            both(
                                absent,
                                eye.beside(absent, Pupils.DIRECT, WORKS::contains),
                                eye.fellow().beside(absent, Pupils.DIRECT, WORKS::contains))));
  }

  private static Stream<Breach> both(
      Seen<?> where, Optional<? extends Seen<?>> one, Optional<? extends Seen<?>> two) {
    return one.stream().flatMap(first -> two.stream().map(last -> Breach.of(where, first, last)));
  }

  private static ConsistencyRule answersFellowOnly() {
    return impossible("light-skips-own-pupil")
        .what("Light in one eye moves only the fellow pupil, although its own pupil can move.")
        .why(
            "Light in an eye reaches both pupils alike; a pupil that answers light in the fellow"
                + " eye answers light in its own where that light moves the fellow pupil.")
        .source(WIRING)
        .on(Pupils.DIRECT, Pupils.CONSENSUAL)
        .wanted("a direct response where both consensual responses are good")
        .suggest("the eye of a consensual response is the one that is watched: check the sides")
        .eachEye(
            eye ->
                eye.seen(Pupils.DIRECT, PupilResponse.ABSENT::equals)
                    .flatMap(
                        absent ->
                            both(
                                absent,
                                eye.beside(absent, Pupils.CONSENSUAL, WORKS::contains),
                                eye.fellow().beside(absent, Pupils.CONSENSUAL, WORKS::contains))));
  }

  private static ConsistencyRule defectOnWrongSide() {
    return impossible("defect-on-wrong-side")
        .what(
            "The afferent defect is in the eye whose light moves pupils; the fellow's moves none.")
        .why("The defect lies in the eye whose light does less.")
        .source(WIRING)
        .on(Pupils.AFFERENT_DEFECT, Pupils.DIRECT, Pupils.CONSENSUAL)
        .wanted("the defect in the eye whose direct response is absent")
        .suggest("check the side of the defect and of the light responses")
        .pair(
            both ->
                Reflexes.eyes(both)
                    .flatMap(eye -> besideBlock(both, eye, Reflexes.side(eye.fellow()))));
  }

  private static ConsistencyRule noDefectBesideBlockedEye() {
    return contradictory("no-defect-but-one-eye-moves-no-pupil", Severity.WARNING)
        .what("No afferent defect is found, and light in one eye moves no pupil.")
        .why("A pupil that answers light in the fellow eye only is what the swinging test shows.")
        .source(WIRING)
        .on(Pupils.AFFERENT_DEFECT, Pupils.DIRECT, Pupils.CONSENSUAL)
        .wanted("an afferent defect in the eye whose direct response is absent")
        .suggest("repeat the swinging light test")
        .pair(both -> Reflexes.eyes(both).flatMap(eye -> besideBlock(both, eye, DefectSide.NONE)));
  }

  private static Stream<Breach> besideBlock(EyeView both, EyeView blocked, DefectSide side) {
    return both.seen(Pupils.AFFERENT_DEFECT, defect -> defect.side() == side)
        .filter(defect -> Reflexes.isAfferentBlock(blocked, defect))
        .flatMap(
            defect ->
                both(
                    defect,
                    blocked.beside(defect, Pupils.DIRECT, any -> true),
                    blocked.beside(defect, Pupils.CONSENSUAL, any -> true)));
  }

  private static ConsistencyRule nearLostLightKept() {
    return implausible("near-lost-but-light-kept", Severity.INFORMATION)
        .what("A pupil answers light and not a near target.")
        .why("Loss of the near response alone is rare; mostly the near target was not looked at.")
        .on(Pupils.NEAR, Pupils.DIRECT)
        .wanted("a near response, or a remark that the person tried")
        .settledByRemark()
        .suggest("repeat it with the person's own thumb as the target")
        .eachEye(
            eye ->
                Breach.clash(
                    eye,
                    Pupils.NEAR,
                    PupilResponse.ABSENT::equals,
                    Pupils.DIRECT,
                    WORKS::contains));
  }
}
