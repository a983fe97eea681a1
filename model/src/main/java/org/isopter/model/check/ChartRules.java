package org.isopter.model.check;

import static org.isopter.model.check.ConsistencyRule.contradictory;
import static org.isopter.model.check.ConsistencyRule.implausible;
import static org.isopter.model.check.ConsistencyRule.impossible;
import static org.isopter.model.check.ConsistencyRule.incomplete;

import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.function.Predicate;
import java.util.stream.Stream;
import org.isopter.model.answer.sight.Chart;
import org.isopter.model.catalogue.Acuities;
import org.isopter.model.catalogue.AcuityReading;
import org.isopter.model.check.sight.Sight;
import org.isopter.model.clinical.statement.Numbers;
import org.isopter.model.exam.EyeView;
import org.isopter.model.exam.Seen;
import org.isopter.model.finding.Finding;
import org.isopter.model.value.Acuity;
import org.isopter.model.value.Quantity;
import org.isopter.model.value.Site;

/** Rules between an acuity and the chart, the distance, the lens and the letters it was read by. */
final class ChartRules {

  private static final Set<Chart> SCORED_BY_LETTERS =
      Set.of(Chart.ETDRS, Chart.LOGMAR, Chart.LANDOLT, Chart.TUMBLING_E);
  private static final double TENTH = 0.1;

  private ChartRules() {}

  static List<ConsistencyRule> all() {
    return List.of(
        conditionsMissing(),
        correctionMissing(),
        fingersWithoutDistance(),
        lightWithDistance(),
        lettersOffChart(),
        suffixBeyondLine(),
        suffixOfWholeLine(),
        fractionAgainstDistance(),
        nearCardFarAway(),
        nearTooFar(),
        handButPrint());
  }

  private static Stream<Seen<AcuityReading>> readings(
      EyeView eye, Predicate<? super AcuityReading> which) {
    List<Finding<AcuityReading>> findings =
        eye.site() == Site.BOTH
            ? List.of(Acuities.DISTANCE)
            : List.of(Acuities.DISTANCE, Acuities.PINHOLE);
    return findings.stream().flatMap(finding -> eye.seen(finding, which));
  }

  private static ConsistencyRule conditionsMissing() {
    return incomplete("acuity-conditions-missing", Severity.INFORMATION)
        .what("An acuity on a chart is stated without the chart or without the distance.")
        .why("Charts differ in steps and crowding; acuities on two charts are hard to compare.")
        .source("DICOM PS3.17 RR.2.3 from memory; common practice")
        .on(Acuities.DISTANCE)
        .wanted("chart and distance")
        .suggest("add both where they are known")
        .everywhere(
            eye -> eye.seen(Acuities.DISTANCE, ChartRules::lacksConditions).map(Breach::of));
  }

  private static boolean lacksConditions(AcuityReading reading) {
    return Sight.isChart(reading) && (reading.chart().isEmpty() || reading.distance().isEmpty());
  }

  private static ConsistencyRule correctionMissing() {
    return incomplete("acuity-correction-missing", Severity.INFORMATION)
        .what("An acuity is stated without what the eye looked through.")
        .why("An acuity without glasses and one with them answer different questions.")
        .on(Acuities.DISTANCE, Acuities.NEAR)
        .wanted("correction: unaided, spectacles, contact-lenses, trial-lenses, best or habitual")
        .suggest("add the correction; unaided is never assumed")
        .everywhere(
            eye ->
                Stream.of(Acuities.DISTANCE, Acuities.NEAR)
                    .flatMap(finding -> eye.seen(finding, ChartRules::lacksCorrection))
                    .map(Breach::of));
  }

  private static boolean lacksCorrection(AcuityReading reading) {
    return Sight.isReadOrCounted(reading) && reading.correction().isEmpty();
  }

  private static ConsistencyRule fingersWithoutDistance() {
    return incomplete("fingers-without-distance", Severity.WARNING)
        .what("Counting fingers is stated without the distance.")
        .why("Counting fingers at 3 m and at 30 cm are ten times apart.")
        .source("WHO categories of vision impairment: counting fingers at 1 m")
        .on(Acuities.DISTANCE, Acuities.PINHOLE)
        .wanted("the distance at which fingers were counted, as in CF 1 m")
        .suggest("write the distance behind CF")
        .everywhere(
            eye ->
                Stream.of(Acuities.DISTANCE, Acuities.PINHOLE)
                    .filter(finding -> eye.site() != Site.BOTH || finding == Acuities.DISTANCE)
                    .flatMap(finding -> eye.seen(finding, Sight::isFingers))
                    .filter(seen -> Sight.shownAt(seen.value()).isEmpty())
                    .map(Breach::of));
  }

  private static ConsistencyRule lightWithDistance() {
    return implausible("no-light-with-distance", Severity.INFORMATION)
        .what("No light perception is stated with a distance.")
        .why("An eye that perceives no light does so at any distance; hand movements may be meant.")
        .on(Acuities.DISTANCE)
        .wanted("NLP without a distance")
        .suggest("remove the distance, or state what was seen at it")
        .everywhere(
            eye ->
                eye.seen(Acuities.DISTANCE, Sight::isNoLight)
                    .filter(seen -> Sight.shownAt(seen.value()).isPresent())
                    .map(Breach::of));
  }

  private static ConsistencyRule lettersOffChart() {
    return contradictory("letters-on-other-chart", Severity.WARNING)
        .what("A count of letters is stated for a chart that is not scored by letters.")
        .why("A letter is worth 0.02 logMAR only where each line holds five in equal steps.")
        .source(
            "85 letters are 0 logMAR: Gregori, Feuer and Rosenfeld 2010, Retina 30:1046, abstract")
        .on(Acuities.DISTANCE, Acuities.PINHOLE)
        .wanted("chart etdrs or logmar beside a count of letters")
        .suggest("correct the chart, or state the line that was read")
        .everywhere(
            eye ->
                readings(eye, ChartRules::isCountOnOtherChart)
                    .map(seen -> Breach.of(seen).in("chart")));
  }

  private static boolean isCountOnOtherChart(AcuityReading reading) {
    return reading.acuity() instanceof Acuity.Letters
        && reading.chart().filter(chart -> !SCORED_BY_LETTERS.contains(chart)).isPresent();
  }

  private static ConsistencyRule suffixBeyondLine() {
    return impossible("suffix-beyond-line")
        .what("More letters were read beyond a line, or missed on it, than a line holds.")
        .why("The suffix counts letters of one line.")
        .source("DICOM PS3.17 RR.2.3")
        .on(Acuities.DISTANCE, Acuities.PINHOLE)
        .wanted("a suffix below the letters on each line")
        .suggest("state the next line instead, or correct letters-per-line")
        .everywhere(eye -> readings(eye, one -> overLine(one) > 0).map(Breach::of));
  }

  private static ConsistencyRule suffixOfWholeLine() {
    return contradictory("suffix-of-whole-line", Severity.WARNING)
        .what("The suffix counts a whole line of letters.")
        .why("All letters of the next line read is the next line; all missed is the line before.")
        .source("DICOM PS3.17 RR.2.3")
        .on(Acuities.DISTANCE, Acuities.PINHOLE)
        .wanted("the next line, or a suffix below the letters on each line")
        .suggest("state the line that was read")
        .everywhere(eye -> readings(eye, one -> overLine(one) == 0).map(Breach::of));
  }

  /** Returns by how much the suffix passes a whole line; negative where it does not, or unknown. */
  private static int overLine(AcuityReading reading) {
    return Sight.fraction(reading)
        .flatMap(line -> reading.lettersPerLine().map(all -> Math.abs(line.letters()) - all))
        .orElse(-1);
  }

  private static ConsistencyRule fractionAgainstDistance() {
    return implausible("fraction-against-distance", Severity.INFORMATION)
        .what("The upper number of a fraction is not the distance of the test.")
        .why(
            "The upper number is the testing distance; charts made for another distance print the"
                + " fraction for 6 m or 20 ft all the same, which a reader cannot know.")
        .on(Acuities.DISTANCE, Acuities.PINHOLE)
        .wanted("an upper number within a tenth of the distance")
        .settledByRemark()
        .suggest("correct the distance, or say in the remarks that the chart was made for it")
        .everywhere(
            eye ->
                readings(eye, ChartRules::isAtOtherDistance)
                    .map(seen -> Breach.of(seen).in("distance")));
  }

  private static boolean isAtOtherDistance(AcuityReading reading) {
    Optional<Double> printed =
        Sight.fraction(reading)
            .flatMap(line -> metres(new Quantity(line.numerator(), line.unit())));
    Optional<Double> tested = reading.distance().flatMap(ChartRules::metres);
    return printed
        .flatMap(one -> tested.filter(two -> Math.abs(one - two) > TENTH * Math.max(one, two)))
        .isPresent();
  }

  private static Optional<Double> metres(Quantity length) {
    return Numbers.metres(length).map(Number::doubleValue);
  }

  private static ConsistencyRule nearCardFarAway() {
    return contradictory("near-card-at-distance", Severity.WARNING)
        .what("A distance acuity was read on a near card.")
        .why("A near card tests reading distance, where focus and spectacles differ.")
        .on(Acuities.DISTANCE, Acuities.PINHOLE)
        .wanted("a distance chart, or near-acuity")
        .suggest("record it as near-acuity with its distance")
        .everywhere(
            eye ->
                readings(eye, one -> one.chart().filter(Chart.NEAR_CARD::equals).isPresent())
                    .map(seen -> Breach.of(seen).in("chart")));
  }

  private static ConsistencyRule nearTooFar() {
    return implausible("near-acuity-too-far", Severity.WARNING)
        .what("A near acuity was taken at more than 1 m.")
        .why("Reading distances are 30 to 60 cm.")
        .on(Acuities.NEAR)
        .wanted("a distance of at most 1 m")
        .suggest("check the unit of the distance, or record a distance acuity")
        .everywhere(
            eye ->
                eye.seen(
                        Acuities.NEAR,
                        one -> one.distance().filter(far -> Sight.isBeyond(far, 1)).isPresent())
                    .map(seen -> Breach.of(seen).in("distance")));
  }

  private static ConsistencyRule handButPrint() {
    return implausible("hand-movements-but-print", Severity.WARNING)
        .what("An eye that sees no more than a moving hand or a light reads print.")
        .why("Print needs shapes; a very short-sighted eye reads, but then it counts fingers.")
        .on(Acuities.NEAR, Acuities.DISTANCE)
        .wanted("near acuity absent, or a better acuity at distance")
        .settledByRemark()
        .suggest("check which eye was meant, and note a strong refraction in the remarks")
        .eachEye(
            eye ->
                Breach.clash(
                    eye, Acuities.NEAR, any -> true, Acuities.DISTANCE, Sight::isHandOrLight));
  }
}
