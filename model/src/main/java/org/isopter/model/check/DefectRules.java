package org.isopter.model.check;

import static org.isopter.model.check.ConsistencyRule.contradictory;
import static org.isopter.model.check.ConsistencyRule.implausible;
import static org.isopter.model.check.ConsistencyRule.incomplete;

import java.math.BigDecimal;
import java.util.List;
import java.util.Set;
import java.util.stream.Stream;
import org.isopter.model.answer.pupil.DefectGrade;
import org.isopter.model.answer.pupil.PupilResponse;
import org.isopter.model.catalogue.Acuities;
import org.isopter.model.catalogue.Drops;
import org.isopter.model.catalogue.Pupils;
import org.isopter.model.catalogue.Pupils.AfferentDefect;
import org.isopter.model.check.sight.Sight;
import org.isopter.model.clinical.pupil.AfferentDefects;
import org.isopter.model.exam.EyeView;
import org.isopter.model.exam.Seen;
import org.isopter.model.finding.Span;
import org.isopter.model.value.Site;

/** Rules about the relative afferent defect beside the pupils and the acuities. */
final class DefectRules {

  private static final Set<DefectGrade> STRONG =
      Set.of(DefectGrade.GRADE_3, DefectGrade.GRADE_4, DefectGrade.GRADE_5);
  private static final Set<DefectGrade> AMAUROTIC = Set.of(DefectGrade.GRADE_5);
  private static final Set<DefectGrade> SLIGHT = Set.of(DefectGrade.TRACE, DefectGrade.GRADE_1);
  private static final BigDecimal STEP = new BigDecimal("0.3");

  private DefectRules() {}

  static List<ConsistencyRule> all() {
    return List.of(
        strongDefectButBrisk(),
        amauroticDefectButSees(),
        allBriskBesideDefect(),
        defectWithoutResponses(),
        gradeAgainstLogUnits(),
        defectWithoutReactingPupil(),
        defectWithDrops(),
        defectInBetterEye());
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

  private static ConsistencyRule amauroticDefectButSees() {
    return contradictory("amaurotic-defect-but-sees", Severity.WARNING)
        .what("An eye with a defect of grade 5, amaurotic, reads letters or counts fingers.")
        .why("Amaurotic is the eye whose light moves no pupil at all; such an eye is blind.")
        .source("Bell and others 1993, Arch Ophthalmol 111:938: grade V, an eye that is blind")
        .on(Pupils.AFFERENT_DEFECT, Acuities.DISTANCE)
        .wanted("a lower grade, or an acuity below fingers")
        .settledByRemark()
        .suggest("repeat the swinging light test, and check the eye of the acuity")
        .eachEye(
            eye ->
                eye.at(Site.BOTH)
                    .seen(
                        Pupils.AFFERENT_DEFECT,
                        defect -> isIn(defect, eye) && isGraded(defect, AMAUROTIC))
                    .flatMap(
                        defect ->
                            eye
                                .beside(defect, Acuities.DISTANCE, Sight::isReadOrCounted)
                                .map(acuity -> Breach.of(defect, acuity))
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
                both.seen(Pupils.AFFERENT_DEFECT, DefectRules::isMoreThanSlight)
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
                both.seen(Pupils.AFFERENT_DEFECT, DefectRules::isFarApart)
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

  private static ConsistencyRule defectWithoutReactingPupil() {
    return contradictory("defect-without-reacting-pupil", Severity.WARNING)
        .what("A defect is stated in one eye, and neither pupil answers any light.")
        .why("The defect is seen on a pupil that answers; one at least must do so.")
        .source(PupilRules.WIRING)
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

  private static ConsistencyRule defectWithDrops() {
    return implausible("defect-with-dilating-drops", Severity.WARNING)
        .what("An afferent defect is stated, and drops that widen the pupils are recorded.")
        .why(
            "A pupil under such a drop answers little or not at all, and the two eyes differ in it.")
        .on(Pupils.AFFERENT_DEFECT, Drops.DILATION)
        .wanted("the defect as tested before the drops, or a remark")
        .settledByRemark()
        .suggest("note that it was tested before the drops, or by the pupil without any")
        .pair(
            both ->
                both.seen(Pupils.AFFERENT_DEFECT, defect -> defect.side().isDefect())
                    .flatMap(
                        defect ->
                            both.exam()
                                .notLater(Drops.DILATION, defect.fact())
                                .limit(1)
                                .map(drop -> Breach.of(defect, drop))));
  }

  private static ConsistencyRule defectInBetterEye() {
    return implausible("defect-in-better-eye", Severity.WARNING)
        .what("The afferent defect is in the eye that sees better by far.")
        .why(
            "The eye that answers less mostly sees less; a cause in front of the retina, a weak"
                + " fellow eye or a lesion behind the chiasm can turn that round.")
        .source("five lines are 0.5 logMAR by definition; the rest common practice, no source")
        .on(Pupils.AFFERENT_DEFECT, Acuities.DISTANCE, Acuities.PINHOLE)
        .wanted("the defect in the eye that sees worse, or a remark why not")
        .settledByRemark()
        .suggest("check the side of the defect and of the acuities; note a cataract or amblyopia")
        .pair(
            both ->
                both.seen(Pupils.AFFERENT_DEFECT, defect -> defect.side().isDefect())
                    .flatMap(
                        defect ->
                            Reflexes.eyes(both)
                                .filter(eye -> isIn(defect.value(), eye))
                                .flatMap(eye -> Sight.farWorseFellow(eye, defect))
                                .map(worse -> Breach.of(defect, worse))));
  }
}
