package org.isopter.model.check.sight;

import java.math.BigDecimal;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.isopter.model.answer.sight.Chart;
import org.isopter.model.answer.sight.Correction;
import org.isopter.model.catalogue.Acuities;
import org.isopter.model.catalogue.AcuityReading;
import org.isopter.model.clinical.acuity.AcuityScale;
import org.isopter.model.clinical.statement.Numbers;
import org.isopter.model.exam.EyeView;
import org.isopter.model.exam.Seen;
import org.isopter.model.value.Acuity;
import org.isopter.model.value.LowVision;
import org.isopter.model.value.Quantity;
import org.isopter.model.value.Unit;

/** Questions about acuities that several rules ask. */
public final class Sight {

  /** Two lines of 0.1 logMAR, less what the names of lines are rounded by. */
  public static final double TWO_LINES = 0.176;

  private static final Set<Correction> BEST_CORRECTED =
      Set.of(Correction.BEST, Correction.TRIAL_LENSES);

  private static final Set<Correction> WORN =
      Set.of(Correction.CONTACT_LENSES, Correction.SPECTACLES, Correction.HABITUAL);

  /** From 6/60 to 6/36: no two lines of a chart with these lines are nearer. */
  private static final double WIDEST_STEP = 0.223;

  private static final Set<BigDecimal> WIDE_STEPS =
      Stream.of("60", "36", "24", "18", "12", "9", "6", "5")
          .map(metres -> new BigDecimal(metres).stripTrailingZeros())
          .collect(Collectors.toUnmodifiableSet());

  /** Five lines, with the same allowance. */
  private static final double FIVE_LINES = 0.476;

  /** The worst that still goes by the name of 6/9: 6/9.5 or 20/32, with the same allowance. */
  private static final double SIX_NINE = 0.212;

  /** The worst that still goes by the name of 6/6. */
  private static final double SIX_SIX = 0.012;

  private static final Set<LowVision> TOO_LITTLE_FOR_SHAPES =
      Set.of(
          LowVision.HAND_MOVEMENTS,
          LowVision.LIGHT_PERCEPTION,
          LowVision.LIGHT_PERCEPTION_ACCURATE,
          LowVision.LIGHT_PERCEPTION_INACCURATE);

  private Sight() {}

  /** Says whether an eye perceives no light. */
  public static boolean isNoLight(AcuityReading reading) {
    return low(reading).filter(LowVision.NO_LIGHT_PERCEPTION::equals).isPresent();
  }

  /** Says whether an eye sees a hand move or a light, and no shapes. */
  public static boolean isHandOrLight(AcuityReading reading) {
    return low(reading).filter(TOO_LITTLE_FOR_SHAPES::contains).isPresent();
  }

  /** Says whether fingers were counted. */
  public static boolean isFingers(AcuityReading reading) {
    return low(reading).filter(LowVision.COUNTING_FINGERS::equals).isPresent();
  }

  /** Says whether letters, or what stands for them on a chart, were read. */
  public static boolean isChart(AcuityReading reading) {
    return low(reading).isEmpty();
  }

  /** Says whether lenses could matter: letters or fingers were seen. */
  public static boolean isReadOrCounted(AcuityReading reading) {
    return isChart(reading) || isFingers(reading);
  }

  /** Returns how far away fingers, a hand or a light were shown, when stated. */
  public static Optional<Quantity> shownAt(AcuityReading reading) {
    return reading.acuity() instanceof Acuity.Low seen ? seen.distance() : Optional.empty();
  }

  /** Returns the line of a chart, where the acuity is written as one. */
  public static Optional<Acuity.Fraction> fraction(AcuityReading reading) {
    return reading.acuity() instanceof Acuity.Fraction line ? Optional.of(line) : Optional.empty();
  }

  /** Says whether an eye that letters or fingers were shown to saw worse than 6/9. */
  public static boolean isWorseThanSixNine(AcuityReading reading) {
    return isFingers(reading) || isWorse(reading, SIX_NINE);
  }

  /** Says whether 6/6 or better was read. */
  public static boolean isSixSix(AcuityReading reading) {
    OptionalDouble size = AcuityScale.logMar(reading.acuity());
    return size.isPresent() && size.getAsDouble() <= SIX_SIX;
  }

  /** Says whether the best correction or trial lenses were worn. */
  public static boolean isBestCorrected(AcuityReading reading) {
    return reading.correction().filter(BEST_CORRECTED::contains).isPresent();
  }

  /** Says whether the first is worse by two lines or more; suffixes are not counted. */
  public static boolean isTwoLinesWorse(AcuityReading one, AcuityReading other) {
    OptionalDouble base = AcuityScale.logMar(other.acuity());
    double most = isOfWideSteps(one) && isOfWideSteps(other) ? WIDEST_STEP : TWO_LINES;
    return base.isPresent() && isWorse(one, base.getAsDouble() + most);
  }

  /** Says whether a line is one of 60, 36, 24, 18, 12, 9, 6 and 5, which lie farther apart. */
  private static boolean isOfWideSteps(AcuityReading reading) {
    boolean letters = reading.chart().map(chart -> chart == Chart.SNELLEN).orElse(true);
    return letters
        && fraction(reading)
            .filter(line -> line.unit().equals(Unit.METRE))
            .filter(line -> WIDE_STEPS.contains(line.denominator().stripTrailingZeros()))
            .isPresent();
  }

  /** Says whether two readings were taken through one correction, or state none. */
  public static boolean isSameCorrection(AcuityReading one, AcuityReading other) {
    return one.correction().equals(other.correction());
  }

  /** Says whether two readings may have been taken through one correction. */
  public static boolean isMaybeSameCorrection(AcuityReading one, AcuityReading other) {
    return one.correction().isEmpty()
        || other.correction().isEmpty()
        || isSameCorrection(one, other);
  }

  /** Says whether a length is more than so many metres. */
  public static boolean isBeyond(Quantity length, double metres) {
    return Numbers.metres(length).filter(far -> far.doubleValue() > metres).isPresent();
  }

  /** Says whether an eye is stated to see no light while its fellow is not. */
  public static boolean isOnlyBlindEye(EyeView eye, Seen<?> at) {
    return eye.beside(at, Acuities.DISTANCE, Sight::isNoLight).isPresent()
        && eye.fellow().beside(at, Acuities.DISTANCE, Sight::isNoLight).isEmpty();
  }

  /**
   * Returns the best acuity of the fellow eye where it is worse than the best of this eye by five
   * lines or more, or no letter at all, but light; of either eye through a pinhole too.
   */
  public static Stream<Seen<AcuityReading>> farWorseFellow(EyeView eye, Seen<?> at) {
    OptionalDouble best =
        readings(eye, at)
            .map(one -> AcuityScale.logMar(one.value().acuity()))
            .flatMapToDouble(OptionalDouble::stream)
            .min();
    List<Seen<AcuityReading>> fellow = readings(eye.fellow(), at).toList();
    return best.isPresent()
            && fellow.stream().allMatch(one -> isFarWorse(one.value(), best.getAsDouble()))
        ? fellow.stream().limit(1)
        : Stream.empty();
  }

  /**
   * Says whether an eye is made for reading by what is worn before it: it reads small print through
   * that, and its fellow 6/9 or better at distance through the same.
   */
  public static boolean isForReading(EyeView eye, Seen<AcuityReading> far) {
    return far.value().correction().filter(WORN::contains).isPresent()
        && eye.beside(
                far, Acuities.NEAR, one -> isSameCorrection(one, far.value()) && isSmallPrint(one))
            .isPresent()
        && eye.fellow()
            .beside(
                far,
                Acuities.DISTANCE,
                one ->
                    isSameCorrection(one, far.value()) && isChart(one) && !isWorseThanSixNine(one))
            .isPresent();
  }

  /** N8 through a contact lens; smaller through glasses, whose lower part may be for reading. */
  private static boolean isSmallPrint(AcuityReading reading) {
    boolean contact = reading.correction().filter(Correction.CONTACT_LENSES::equals).isPresent();
    BigDecimal largest = BigDecimal.valueOf(contact ? 8 : 6);
    return reading.acuity() instanceof Acuity.Points print && print.size().compareTo(largest) <= 0;
  }

  private static boolean isFarWorse(AcuityReading reading, double best) {
    return !isNoLight(reading) && (low(reading).isPresent() || isWorse(reading, best + FIVE_LINES));
  }

  private static Stream<Seen<AcuityReading>> readings(EyeView eye, Seen<?> at) {
    return Stream.of(Acuities.DISTANCE, Acuities.PINHOLE)
        .flatMap(finding -> eye.seen(finding, one -> !(one.acuity() instanceof Acuity.NotImproved)))
        .filter(at::isWith);
  }

  private static boolean isWorse(AcuityReading reading, double logMar) {
    OptionalDouble size = AcuityScale.logMar(reading.acuity());
    return size.isPresent() && size.getAsDouble() > logMar;
  }

  private static Optional<LowVision> low(AcuityReading reading) {
    return reading.acuity() instanceof Acuity.Low seen
        ? Optional.of(seen.category())
        : Optional.empty();
  }
}
