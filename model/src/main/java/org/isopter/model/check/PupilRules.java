package org.isopter.model.check;

import static org.isopter.model.check.ConsistencyRule.contradictory;
import static org.isopter.model.check.ConsistencyRule.implausible;
import static org.isopter.model.check.ConsistencyRule.impossible;
import static org.isopter.model.check.ConsistencyRule.incomplete;
import static org.isopter.model.check.Reflexes.WORKS;

import java.math.BigDecimal;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Stream;
import org.isopter.model.answer.pupil.DefectGrade;
import org.isopter.model.answer.pupil.DefectSide;
import org.isopter.model.answer.pupil.PupilResponse;
import org.isopter.model.catalogue.Pupils;
import org.isopter.model.catalogue.Pupils.AfferentDefect;
import org.isopter.model.clinical.pupil.AfferentDefects;
import org.isopter.model.exam.EyeView;
import org.isopter.model.exam.Seen;
import org.isopter.model.finding.Span;
import org.isopter.model.value.Site;

/** Rules about the light responses, the near response and the afferent defect. */
final class PupilRules {

  private static final String WIRING = "pupil pathways: Trobe; NOVEL, University of Utah";
  private static final Set<DefectGrade> STRONG =
      Set.of(DefectGrade.GRADE_3, DefectGrade.GRADE_4, DefectGrade.GRADE_5);
  private static final Set<DefectGrade> SLIGHT = Set.of(DefectGrade.TRACE, DefectGrade.GRADE_1);
  private static final BigDecimal STEP = new BigDecimal("0.3");

  private PupilRules() {}

  static List<ConsistencyRule> all() {
    return List.of(
        litEyeReachesOnePupil(),
        answersFellowOnly(),
        defectOnWrongSide(),
        noDefectBesideBlockedEye(),
        strongDefectButBrisk(),
        allBriskBesideDefect(),
        defectWithoutResponses(),
        gradeAgainstLogUnits(),
        nearLostLightKept(),
        defectWithoutReactingPupil());
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

  private static ConsistencyRule strongDefectButBrisk() {
    return contradictory("strong-defect-but-brisk", Severity.WARNING)
        .what("The eye of a defect of 3+ or 4+ has a brisk direct response.")
        .why(
            "From 3+ on the pupil widens at once when the light comes to it. The grade alone says"
                + " nothing of what the eye sees.")
        .source(
            "Bell and others 1993, Arch Ophthalmol 111:938: grade IV means 2.0 log units, grade V an"
                + " eye that is blind")
        .on(Pupils.DIRECT, Pupils.AFFERENT_DEFECT)
        .wanted("a direct response that is not brisk, or a lower grade")
        .suggest("repeat the swinging light test and the direct response")
        .eachEye(
            eye ->
                eye.seen(Pupils.DIRECT, PupilResponse.BRISK::equals)
                    .flatMap(
                        brisk ->
                            eye
                                .at(Site.BOTH)
                                .beside(
                                    brisk,
                                    Pupils.AFFERENT_DEFECT,
                                    defect -> isIn(defect, eye) && isGraded(defect, STRONG))
                                .map(defect -> Breach.of(brisk, defect))
                                .stream()));
  }

  private static boolean isIn(AfferentDefect defect, EyeView eye) {
    return defect.side() == Reflexes.side(eye);
  }

  private static boolean isGraded(AfferentDefect defect, Set<DefectGrade> grades) {
    return defect.grade().filter(grades::contains).isPresent();
  }

  private static ConsistencyRule allBriskBesideDefect() {
    return contradictory("all-brisk-beside-defect", Severity.INFORMATION)
        .what("All four light responses are brisk beside an afferent defect of more than 1+.")
        .why(
            "The swinging test shows what the single responses may hide, so both can be true; yet"
                + " brisk and equal is often written by habit.")
        .on(Pupils.AFFERENT_DEFECT, Pupils.DIRECT, Pupils.CONSENSUAL)
        .wanted("responses as they were seen, or a grade of trace or 1+")
        .suggest("state how the light responses of the two eyes differed")
        .pair(
            both ->
                both.seen(Pupils.AFFERENT_DEFECT, PupilRules::isMoreThanSlight)
                    .filter(defect -> Reflexes.eyes(both).allMatch(eye -> isBrisk(eye, defect)))
                    .map(defect -> Breach.of(defect, responses(both, defect))));
  }

  private static Seen<?>[] responses(EyeView both, Seen<?> at) {
    return Reflexes.eyes(both)
        .flatMap(
            eye ->
                Stream.of(Pupils.DIRECT, Pupils.CONSENSUAL)
                    .flatMap(finding -> eye.beside(at, finding, any -> true).stream()))
        .toArray(Seen<?>[]::new);
  }

  private static boolean isMoreThanSlight(AfferentDefect defect) {
    return defect.side().isDefect() && !isGraded(defect, SLIGHT);
  }

  private static boolean isBrisk(EyeView eye, Seen<?> at) {
    return eye.beside(at, Pupils.DIRECT, PupilResponse.BRISK::equals).isPresent()
        && eye.beside(at, Pupils.CONSENSUAL, PupilResponse.BRISK::equals).isPresent();
  }

  private static ConsistencyRule defectWithoutResponses() {
    return incomplete("defect-without-responses", Severity.INFORMATION)
        .what("An afferent defect is stated and no direct light response is.")
        .why("A reader needs to know whether the pupils can move before a comparison means much.")
        .on(Pupils.AFFERENT_DEFECT, Pupils.DIRECT)
        .wanted("the direct light response of each eye, or why it was not tested")
        .suggest("add direct-light-response for right and left")
        .pair(
            both ->
                both.seen(Pupils.AFFERENT_DEFECT, defect -> defect.side().isDefect())
                    .filter(
                        defect ->
                            Reflexes.eyes(both).allMatch(eye -> eye.isSilentOn(Pupils.DIRECT)))
                    .map(Breach::of));
  }

  private static ConsistencyRule gradeAgainstLogUnits() {
    return implausible("defect-grade-against-log-units", Severity.INFORMATION)
        .what("Grade and log units of a defect lie more than 0.3 log units apart.")
        .why("In one study most eyes of a grade lay within a span of log units.")
        .source(
            "Yotharak and Aui-Aree 2012, J Med Assoc Thai 95(4), n = 69; allowance: a filter step")
        .on(Pupils.AFFERENT_DEFECT)
        .wanted("log units within 0.3 of the published span of the grade")
        .suggest("check both; one is never derived from the other")
        .pair(
            both ->
                both.seen(Pupils.AFFERENT_DEFECT, PupilRules::isFarApart)
                    .map(defect -> Breach.of(defect).in("log-units")));
  }

  private static boolean isFarApart(AfferentDefect defect) {
    return defect
        .logUnits()
        .flatMap(
            units ->
                defect
                    .grade()
                    .flatMap(AfferentDefects::publishedSpan)
                    .filter(span -> isOutside(span, units)))
        .isPresent();
  }

  private static boolean isOutside(Span span, BigDecimal units) {
    return units.compareTo(span.least().subtract(STEP)) < 0
        || units.compareTo(span.most().add(STEP)) > 0;
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

  private static ConsistencyRule defectWithoutReactingPupil() {
    return contradictory("defect-without-reacting-pupil", Severity.WARNING)
        .what("A defect is stated in one eye, and neither pupil answers any light.")
        .why("The defect is seen on a pupil that answers; one at least must do so.")
        .source(WIRING)
        .on(Pupils.AFFERENT_DEFECT, Pupils.DIRECT, Pupils.CONSENSUAL)
        .wanted("a pupil that answers, or the defect as not testable")
        .settledByRemark()
        .suggest("state which pupil was watched, or afferent-defect as { absent: unable }")
        .pair(
            both ->
                both.seen(Pupils.AFFERENT_DEFECT, defect -> defect.side().isDefect())
                    .filter(defect -> Reflexes.eyes(both).allMatch(eye -> isStill(eye, defect)))
                    .map(defect -> Breach.of(defect, responses(both, defect))));
  }

  private static boolean isStill(EyeView eye, Seen<?> at) {
    return Reflexes.fails(eye, Pupils.DIRECT, at) && Reflexes.fails(eye, Pupils.CONSENSUAL, at);
  }
}
