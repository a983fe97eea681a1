package org.isopter.model.check;

import static org.isopter.model.check.ConsistencyRule.contradictory;
import static org.isopter.model.check.ConsistencyRule.implausible;
import static org.isopter.model.check.ConsistencyRule.impossible;
import static org.isopter.model.check.Reflexes.WORKS;

import java.util.List;
import java.util.stream.Stream;
import org.isopter.model.answer.movement.DoubleVision;
import org.isopter.model.answer.pupil.DefectSide;
import org.isopter.model.answer.pupil.PupilResponse;
import org.isopter.model.answer.tissue.GlobeState;
import org.isopter.model.catalogue.Acuities;
import org.isopter.model.catalogue.Globes;
import org.isopter.model.catalogue.Movements;
import org.isopter.model.catalogue.Pupils;
import org.isopter.model.catalogue.VisualFunctions;
import org.isopter.model.check.sight.Sight;
import org.isopter.model.exam.EyeView;
import org.isopter.model.exam.Seen;

/** Rules about the pupils of eyes that see no light, and about two eyes of which one sees none. */
final class LightRules {

  private static final String WIRING =
      "pupil pathways: Trobe; NOVEL, University of Utah; loss behind the geniculate body spares the"
          + " reflex: common practice, no source";
  private static final String RECHECK =
      "check the acuity and the eye; if the person says so against what was seen, say so in the"
          + " remarks";

  private LightRules() {}

  static List<ConsistencyRule> all() {
    return List.of(
        noLightButBrisk(),
        noLightButFellowAnswers(),
        noLightButSluggish(),
        neitherEyeSeesButBrisk(),
        noLightButNoDefect(),
        defectInSeeingEye(),
        doubleWithOneEye(),
        stereopsisWithOneEye());
  }

  private static ConsistencyRule noLightButBrisk() {
    return contradictory("no-light-but-brisk", Severity.WARNING)
        .what("An eye without light perception has a good direct light response.")
        .why(
            "The light that moves the pupil travels in the nerve that vision needs. An entry may be"
                + " wrong; a loss of sight that is functional leaves the pupil as it was.")
        .source(WIRING)
        .on(Pupils.DIRECT, Acuities.DISTANCE)
        .wanted("an absent direct response, or an acuity of light perception or better")
        .settledByRemark()
        .suggest(RECHECK)
        .eachEye(
            eye ->
                eye.seen(Pupils.DIRECT, WORKS::contains)
                    .filter(direct -> Sight.isOnlyBlindEye(eye, direct))
                    .map(direct -> Reflexes.besideAcuity(direct, eye)));
  }

  private static ConsistencyRule noLightButFellowAnswers() {
    return contradictory("no-light-but-fellow-answers", Severity.WARNING)
        .what("Light in an eye without light perception moves the pupil of its fellow.")
        .why(
            "A consensual response needs the nerve of the eye that is lit, unless the loss is"
                + " functional.")
        .source(WIRING)
        .on(Pupils.CONSENSUAL, Acuities.DISTANCE)
        .wanted("an absent consensual response of the fellow eye, or light perception in the eye")
        .settledByRemark()
        .suggest("the eye of a consensual response is the one that is watched; " + RECHECK)
        .eachEye(
            eye ->
                eye.fellow()
                    .seen(Pupils.CONSENSUAL, WORKS::contains)
                    .filter(response -> Sight.isOnlyBlindEye(eye, response))
                    .map(response -> Reflexes.besideAcuity(response, eye)));
  }

  private static ConsistencyRule noLightButSluggish() {
    return contradictory("no-light-but-sluggish", Severity.WARNING)
        .what("An eye without light perception has a sluggish direct light response.")
        .why("A trace of the response may outlast vision, but an error of record is likelier.")
        .source(WIRING)
        .on(Pupils.DIRECT, Acuities.DISTANCE)
        .wanted("an absent direct response, or an acuity of light perception or better")
        .suggest("test light perception again with the brightest light and the fellow eye covered")
        .eachEye(
            eye ->
                eye.seen(Pupils.DIRECT, PupilResponse.SLUGGISH::equals)
                    .filter(direct -> Sight.isOnlyBlindEye(eye, direct))
                    .map(direct -> Reflexes.besideAcuity(direct, eye)));
  }

  private static ConsistencyRule neitherEyeSeesButBrisk() {
    return implausible("neither-eye-sees-but-brisk", Severity.INFORMATION)
        .what("Neither eye perceives light, and a direct light response is good.")
        .why("It fits loss behind the pupil fibres, which is rare; more often an entry is wrong.")
        .source(WIRING)
        .on(Pupils.DIRECT, Acuities.DISTANCE)
        .wanted("absent responses, or a remark that confirms the finding")
        .settledByRemark()
        .suggest("confirm both entries and say so in the remarks")
        .eachEye(
            eye ->
                Breach.clash(
                        eye, Pupils.DIRECT, WORKS::contains, Acuities.DISTANCE, Sight::isNoLight)
                    .filter(breach -> bothBlind(eye)));
  }

  private static boolean bothBlind(EyeView eye) {
    return Stream.of(eye, eye.fellow())
        .allMatch(one -> one.seen(Acuities.DISTANCE, Sight::isNoLight).findAny().isPresent());
  }

  private static ConsistencyRule noLightButNoDefect() {
    return contradictory("no-light-but-no-defect", Severity.WARNING)
        .what("One eye has no light perception, its fellow reads a chart, and no defect is found.")
        .why("Loss of all light in one eye leaves its pupil fibres dead, and the fellow wins.")
        .source(WIRING)
        .on(Pupils.AFFERENT_DEFECT, Acuities.DISTANCE)
        .wanted("an afferent defect in the eye without light perception")
        .suggest("repeat the swinging light test; where one pupil is fixed, watch the other")
        .pair(both -> Reflexes.eyes(both).flatMap(eye -> defect(eye, both, DefectSide.NONE)));
  }

  private static Stream<Breach> defect(EyeView blind, EyeView both, DefectSide side) {
    return both.seen(Pupils.AFFERENT_DEFECT, defect -> defect.side() == side)
        .filter(defect -> Sight.isOnlyBlindEye(blind, defect))
        .filter(
            defect -> blind.fellow().beside(defect, Acuities.DISTANCE, Sight::isChart).isPresent())
        .map(defect -> Reflexes.besideAcuity(defect, blind));
  }

  private static ConsistencyRule defectInSeeingEye() {
    return impossible("defect-in-seeing-eye")
        .what("The afferent defect is stated in the eye that sees, its fellow having no light.")
        .why("The defect is relative: it lies in the eye whose nerve carries less light.")
        .source(WIRING)
        .on(Pupils.AFFERENT_DEFECT, Acuities.DISTANCE)
        .wanted("an afferent defect in the eye without light perception")
        .suggest("check the side of the defect and of the acuity")
        .pair(
            both ->
                Reflexes.eyes(both).flatMap(eye -> defect(eye, both, Reflexes.side(eye.fellow()))));
  }

  private static ConsistencyRule doubleWithOneEye() {
    return impossible("double-with-one-eye")
        .what("Double vision of both eyes together is stated, and one eye sees nothing or is gone.")
        .why("Binocular double vision needs two eyes that see: it goes when either is covered.")
        .on(Movements.DIPLOPIA, Acuities.DISTANCE, Globes.STATE)
        .wanted("monocular or none, or an acuity of light perception or better in each eye")
        .suggest("ask again with each eye covered in turn")
        .pair(
            both ->
                Reflexes.eyes(both)
                    .flatMap(
                        eye ->
                            both.seen(Movements.DIPLOPIA, LightRules::isBinocular)
                                .flatMap(seen -> sightless(eye, seen))));
  }

  private static ConsistencyRule stereopsisWithOneEye() {
    return contradictory("stereopsis-with-one-eye", Severity.WARNING)
        .what("Depth is seen with both eyes, and one eye is gone or sees no more than a hand.")
        .why(
            "Stereopsis compares the images of two eyes. An entry may be wrong; a loss of sight that"
                + " is functional leaves it as it was.")
        .on(VisualFunctions.STEREOPSIS, Acuities.DISTANCE, Globes.STATE)
        .wanted("no stereopsis, or an acuity with which two images can be compared")
        .settledByRemark()
        .suggest(RECHECK)
        .pair(
            both ->
                Reflexes.eyes(both)
                    .flatMap(
                        eye ->
                            both.seen(VisualFunctions.STEREOPSIS, LightRules::isDepthSeen)
                                .flatMap(seen -> shapeless(eye, seen))));
  }

  private static boolean isDepthSeen(VisualFunctions.Stereopsis stereopsis) {
    return stereopsis.result().word().equals("present");
  }

  private static Stream<Breach> shapeless(EyeView eye, Seen<?> seen) {
    return Stream.concat(
            sightless(eye, seen),
            eye
                .beside(seen, Acuities.DISTANCE, Sight::isHandOrLight)
                .map(low -> Breach.of(seen, low))
                .stream())
        .limit(1);
  }

  private static Stream<Breach> sightless(EyeView eye, Seen<?> seen) {
    return Reflexes.isBlindBeside(eye, seen)
        ? Stream.of(Reflexes.besideAcuity(seen, eye))
        : eye
            .beside(seen, Globes.STATE, GlobeState::isSightless)
            .map(gone -> Breach.of(seen, gone))
            .stream();
  }

  private static boolean isBinocular(Movements.Diplopia diplopia) {
    return diplopia.kind() == DoubleVision.BINOCULAR;
  }
}
