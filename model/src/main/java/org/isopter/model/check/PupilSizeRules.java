package org.isopter.model.check;

import static org.isopter.model.check.ConsistencyRule.contradictory;
import static org.isopter.model.check.ConsistencyRule.implausible;

import java.math.BigDecimal;
import java.util.List;
import java.util.Set;
import java.util.stream.Stream;
import org.isopter.model.answer.pupil.Lighting;
import org.isopter.model.answer.pupil.PupilEquality;
import org.isopter.model.answer.pupil.PupilResponse;
import org.isopter.model.catalogue.Pupils;
import org.isopter.model.exam.EyePair;
import org.isopter.model.exam.EyeView;
import org.isopter.model.exam.Seen;

/** Rules about the sizes of the pupils. */
final class PupilSizeRules {

  private static final BigDecimal HALF = new BigDecimal("0.5");
  private static final BigDecimal TWO = BigDecimal.valueOf(2);
  private static final Set<Lighting> JUDGED_IN = Set.of(Lighting.ROOM, Lighting.BRIGHT);

  private PupilSizeRules() {}

  static List<ConsistencyRule> all() {
    return List.of(
        equalButSizesDiffer(),
        equalButApartInTheDim(),
        unequalButSizesSame(),
        widerInLight(),
        fixedButChanges(),
        briskButOneSize(),
        largerAgainstSizes());
  }

  private static ConsistencyRule equalButSizesDiffer() {
    return contradictory("pupils-equal-but-sizes-differ", Severity.WARNING)
        .what("The pupils are called equal, and their sizes differ by 1 mm or more in the light.")
        .why("A difference of 1 mm is seen without a ruler.")
        .on(Pupils.EQUALITY, Pupils.SIZE)
        .wanted("unequal, or sizes that differ by less than 1 mm")
        .suggest("measure again, both eyes in one light")
        .pair(both -> equalButApart(both, JUDGED_IN));
  }

  private static ConsistencyRule equalButApartInTheDim() {
    return implausible("pupils-equal-but-apart-in-the-dim", Severity.WARNING)
        .what("The pupils are called equal, and in dim light they differ by 1 mm or more.")
        .why(
            "A pupil that does not widen shows in the dim alone, and equal in the light of the room"
                + " then hides it.")
        .on(Pupils.EQUALITY, Pupils.SIZE)
        .wanted("which pupil is the larger in the dim, or a remark in what light they are equal")
        .settledByRemark()
        .suggest("compare them again in the dim and in bright light")
        .pair(both -> equalButApart(both, Set.of(Lighting.DIM)));
  }

  private static Stream<Breach> equalButApart(EyeView both, Set<Lighting> lights) {
    return both.seen(Pupils.EQUALITY, PupilEquality.EQUAL::equals)
        .flatMap(
            equal ->
                pairs(both, equal)
                    .filter(pair -> lights.contains(pair.right().value().lighting()))
                    .filter(pair -> apart(pair).compareTo(BigDecimal.ONE) >= 0)
                    .limit(1)
                    .map(pair -> Breach.of(equal, pair.right(), pair.left())));
  }

  private static ConsistencyRule unequalButSizesSame() {
    return contradictory("pupils-unequal-but-sizes-same", Severity.WARNING)
        .what("The pupils are called unequal, and their sizes are the same in every light.")
        .why("Unequal pupils have unequal sizes in some light.")
        .on(Pupils.EQUALITY, Pupils.SIZE)
        .wanted("equal, or sizes that differ")
        .suggest("measure again in bright and in dim light")
        .pair(
            both ->
                both.seen(Pupils.EQUALITY, judged -> judged != PupilEquality.EQUAL)
                    .flatMap(unequal -> sameInEveryLight(both, unequal)));
  }

  private static Stream<Breach> sameInEveryLight(EyeView both, Seen<?> unequal) {
    List<EyePair<Pupils.Size>> pairs = pairs(both, unequal).toList();
    boolean same = pairs.stream().allMatch(pair -> apart(pair).signum() == 0);
    return pairs.stream()
        .limit(same ? 1 : 0)
        .map(pair -> Breach.of(unequal, pair.right(), pair.left()));
  }

  private static ConsistencyRule widerInLight() {
    return implausible("pupil-wider-in-light", Severity.WARNING)
        .what("A pupil is wider by 0.5 mm or more in bright light than in dim light.")
        .why("Light narrows a pupil; the opposite is a rare sign, and a slip of the pen is common.")
        .on(Pupils.SIZE)
        .wanted("the wider size in the dimmer light")
        .settledByRemark()
        .suggest("check whether the two sizes were exchanged")
        .eachEye(
            eye ->
                eye.seen(Pupils.SIZE, size -> size.lighting() == Lighting.BRIGHT)
                    .flatMap(
                        bright ->
                            eye
                                .beside(
                                    bright,
                                    Pupils.SIZE,
                                    dim ->
                                        dim.lighting() == Lighting.DIM
                                            && isWider(bright.value(), dim, HALF))
                                .map(dim -> Breach.of(bright, dim))
                                .stream()));
  }

  private static ConsistencyRule fixedButChanges() {
    return contradictory("pupil-fixed-but-follows-light", Severity.WARNING)
        .what("A pupil answers no light in either eye, and is 2 mm narrower in bright light.")
        .why("A pupil that light does not move has one size in bright and in dim light.")
        .on(Pupils.SIZE, Pupils.DIRECT, Pupils.CONSENSUAL)
        .wanted("much the same size in bright and dim light, or some light response")
        .suggest("repeat the light responses with a brighter light in a darker room")
        .eachEye(
            eye ->
                eye.seen(Pupils.SIZE, size -> size.lighting() == Lighting.BRIGHT)
                    .filter(
                        bright ->
                            Reflexes.fails(eye, Pupils.DIRECT, bright)
                                && Reflexes.fails(eye, Pupils.CONSENSUAL, bright))
                    .flatMap(
                        bright ->
                            eye
                                .beside(
                                    bright,
                                    Pupils.SIZE,
                                    dim ->
                                        dim.lighting() == Lighting.DIM
                                            && isWider(dim, bright.value(), TWO))
                                .flatMap(
                                    dim ->
                                        eye.beside(
                                                bright, Pupils.DIRECT, PupilResponse.ABSENT::equals)
                                            .map(fixed -> Breach.of(bright, dim, fixed)))
                                .stream()));
  }

  private static ConsistencyRule briskButOneSize() {
    return implausible("brisk-but-one-size", Severity.WARNING)
        .what("A pupil answers light briskly, and has one size in bright and in dim light.")
        .why("A brisk pupil is narrower in bright light; one of the sizes may be a copy.")
        .on(Pupils.SIZE, Pupils.DIRECT)
        .wanted("a larger size in dim light, or a remark")
        .settledByRemark()
        .suggest("measure again in each light")
        .eachEye(
            eye ->
                eye.seen(Pupils.SIZE, size -> size.lighting() == Lighting.BRIGHT)
                    .flatMap(bright -> sameInDim(eye, bright).limit(1)));
  }

  private static Stream<Breach> sameInDim(EyeView eye, Seen<Pupils.Size> bright) {
    return eye
        .beside(
            bright,
            Pupils.SIZE,
            dim ->
                dim.lighting() == Lighting.DIM
                    && millimetres(dim).compareTo(millimetres(bright.value())) == 0)
        .flatMap(
            dim ->
                eye.beside(bright, Pupils.DIRECT, PupilResponse.BRISK::equals)
                    .map(brisk -> Breach.of(bright, dim, brisk)))
        .stream();
  }

  private static ConsistencyRule largerAgainstSizes() {
    return contradictory("larger-pupil-against-sizes", Severity.WARNING)
        .what("One pupil is called the larger, and by its size in every light it is the smaller.")
        .why("The sides of one of the two were exchanged.")
        .on(Pupils.EQUALITY, Pupils.SIZE)
        .wanted("the larger size in the eye that is called so")
        .suggest("check the sides")
        .pair(
            both ->
                both.seen(Pupils.EQUALITY, PupilSizeRules::isSided)
                    .flatMap(judged -> againstSizes(both, judged)));
  }

  private static boolean isSided(PupilEquality judged) {
    return judged == PupilEquality.RIGHT_LARGER || judged == PupilEquality.LEFT_LARGER;
  }

  private static Stream<Breach> againstSizes(EyeView both, Seen<PupilEquality> judged) {
    List<EyePair<Pupils.Size>> pairs = pairs(both, judged).toList();
    boolean right = judged.value() == PupilEquality.RIGHT_LARGER;
    boolean against =
        pairs.stream()
            .allMatch(
                pair ->
                    right
                        ? isWider(pair.left().value(), pair.right().value(), HALF)
                        : isWider(pair.right().value(), pair.left().value(), HALF));
    return pairs.stream()
        .limit(against ? 1 : 0)
        .map(pair -> Breach.of(judged, pair.right(), pair.left()));
  }

  static boolean isWider(Pupils.Size one, Pupils.Size other, BigDecimal by) {
    return millimetres(one).subtract(millimetres(other)).compareTo(by) >= 0;
  }

  private static BigDecimal millimetres(Pupils.Size size) {
    return size.diameter().value();
  }

  /** Returns the sizes of both pupils in one light that were taken at the time of a judgement. */
  private static Stream<EyePair<Pupils.Size>> pairs(EyeView both, Seen<?> judged) {
    return both.exam().pairs(Pupils.SIZE).filter(pair -> judged.isWith(pair.right()));
  }

  private static BigDecimal apart(EyePair<Pupils.Size> pair) {
    return millimetres(pair.right().value()).subtract(millimetres(pair.left().value())).abs();
  }
}
