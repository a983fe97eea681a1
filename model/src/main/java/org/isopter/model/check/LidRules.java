package org.isopter.model.check;

import static org.isopter.model.check.ConsistencyRule.contradictory;
import static org.isopter.model.check.ConsistencyRule.implausible;
import static org.isopter.model.check.ConsistencyRule.impossible;

import java.math.BigDecimal;
import java.util.List;
import java.util.stream.Stream;
import org.isopter.model.answer.pupil.Sweating;
import org.isopter.model.answer.tissue.Presence;
import org.isopter.model.catalogue.Lids;
import org.isopter.model.catalogue.Pupils;
import org.isopter.model.exam.EyeView;
import org.isopter.model.exam.Seen;

/** Rules about the upper lid and the skin of the face; all lengths are in mm. */
final class LidRules {

  private static final BigDecimal HIGH = new BigDecimal("4.5");
  private static final BigDecimal LOW = BigDecimal.ONE;

  private LidRules() {}

  static List<ConsistencyRule> all() {
    return List.of(
        lidAboveFissure(), ptosisButLidHigh(), noPtosisButLidLow(), lessSweatOnWiderSide());
  }

  private static ConsistencyRule lidAboveFissure() {
    return impossible("margin-reflex-beyond-fissure")
        .what("The distance from reflex to upper lid is larger than the whole fissure.")
        .why("It is the upper part of the fissure, which reaches from lid to lid.")
        .on(Lids.MARGIN_REFLEX, Lids.FISSURE)
        .wanted("a distance of at most the height of the fissure")
        .suggest("measure both again")
        .eachEye(
            eye ->
                eye.seen(Lids.MARGIN_REFLEX)
                    .flatMap(
                        distance ->
                            eye
                                .beside(
                                    distance,
                                    Lids.FISSURE,
                                    height ->
                                        height.value().compareTo(distance.value().value()) < 0)
                                .map(height -> Breach.of(distance, height))
                                .stream()));
  }

  private static ConsistencyRule ptosisButLidHigh() {
    return contradictory("ptosis-but-lid-high", Severity.WARNING)
        .what("An upper lid droops and stands 4.5 mm or more above the reflex.")
        .why("4 to 5 mm is usual; a lid that droops stands lower, unless its fellow is drawn up.")
        .on(Lids.PTOSIS, Lids.MARGIN_REFLEX)
        .wanted("a distance below 4.5 mm, or ptosis absent")
        .suggest("check the eye, and compare with the fellow lid")
        .eachEye(
            eye ->
                Breach.clash(
                    eye,
                    Lids.PTOSIS,
                    one -> one.presence() == Presence.PRESENT,
                    Lids.MARGIN_REFLEX,
                    distance -> distance.value().compareTo(HIGH) >= 0));
  }

  private static ConsistencyRule noPtosisButLidLow() {
    return contradictory("no-ptosis-but-lid-low", Severity.WARNING)
        .what("An upper lid does not droop and stands 1 mm or less above the reflex.")
        .why("A lid so low covers the pupil; 4 to 5 mm is usual.")
        .on(Lids.PTOSIS, Lids.MARGIN_REFLEX)
        .wanted("ptosis present or equivocal, or a larger distance")
        .suggest("check the eye, and whether the brow was held")
        .eachEye(
            eye ->
                Breach.clash(
                    eye,
                    Lids.PTOSIS,
                    one -> one.presence() == Presence.ABSENT,
                    Lids.MARGIN_REFLEX,
                    distance -> distance.value().compareTo(LOW) <= 0));
  }

  private static ConsistencyRule lessSweatOnWiderSide() {
    return implausible("less-sweat-on-wider-side", Severity.INFORMATION)
        .what("The face sweats less on one side only, and the pupil of that side is wider by 1 mm.")
        .why("Loss of sympathetic supply takes sweat and narrows the pupil on the same side.")
        .on(Lids.SWEATING, Pupils.SIZE)
        .wanted("the narrower pupil on the side that sweats less")
        .settledByRemark()
        .suggest("check the sides; other causes of a wide pupil may hide a narrow one")
        .eachEye(
            eye ->
                eye.seen(Lids.SWEATING, sweating -> sweating != Sweating.NORMAL)
                    .filter(
                        less ->
                            eye.fellow()
                                .beside(less, Lids.SWEATING, Sweating.NORMAL::equals)
                                .isPresent())
                    .flatMap(
                        less ->
                            eye.seen(Pupils.SIZE)
                                .filter(less::isWith)
                                .flatMap(own -> beside(eye.fellow(), own, less))
                                .limit(1)));
  }

  private static Stream<Breach> beside(EyeView fellow, Seen<Pupils.Size> own, Seen<Sweating> less) {
    return fellow
        .beside(
            own,
            Pupils.SIZE,
            size ->
                size.lighting() == own.value().lighting()
                    && PupilSizeRules.isWider(own.value(), size, BigDecimal.ONE))
        .map(size -> Breach.of(less, own, size))
        .stream();
  }
}
