package org.isopter.model.clinical.acuity;

import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.List;
import java.util.OptionalDouble;
import java.util.OptionalInt;
import org.isopter.model.clinical.statement.Answer;
import org.isopter.model.clinical.statement.Certainty;
import org.isopter.model.clinical.statement.Numbers;
import org.isopter.model.clinical.statement.Sources;
import org.isopter.model.clinical.statement.StatementBuilder;
import org.isopter.model.value.Acuity;

/**
 * Distance acuity in the notations that measure the same angle.
 *
 * <p>A suffix is never counted here: what is converted is the full line. {@link PartialLine} counts
 * it where the chart allows.
 */
public final class AcuityEquivalents {

  /**
   * One line in every notation.
   *
   * @param logMar the logarithm of the minimum angle of resolution, to 0.001
   * @param decimal the decimal acuity, to 0.0001
   * @param minutes the minimum angle of resolution in minutes of arc, to 0.001
   * @param letters the letter score 85 - 50 logMAR, whole; empty below no letter at all
   * @param vas the visual acuity score 100 - 50 logMAR, whole; empty below zero
   */
  public record Equivalents(
      BigDecimal logMar,
      BigDecimal decimal,
      BigDecimal minutes,
      OptionalInt letters,
      OptionalInt vas) {

    static Equivalents of(double logMar) {
      return new Equivalents(
          Numbers.round(logMar, 3),
          Numbers.round(Math.pow(10, -logMar), 4),
          Numbers.round(Math.pow(10, logMar), 3),
          score(85, logMar),
          score(100, logMar));
    }

    private static OptionalInt score(int atZero, double logMar) {
      int score = Numbers.whole(atZero - 50 * logMar);
      return score < 0 ? OptionalInt.empty() : OptionalInt.of(score);
    }
  }

  private static final String ID = "acuity.equivalents";

  private AcuityEquivalents() {}

  /**
   * Returns the acuity in every notation of an angle.
   *
   * <p>Withheld for low vision (see {@link LowVisionConvention}), for near print (see {@link
   * NearAcuity}) and for a pinhole that did not improve.
   */
  public static Answer<Equivalents> of(Acuity acuity) {
    StatementBuilder topic = StatementBuilder.of(ID, Sources.ACUITY_FORMULAS, "acuity " + acuity);
    OptionalDouble logMar = AcuityScale.logMar(acuity);
    if (logMar.isEmpty()) {
      return topic.withheld(acuity + " measures no angle; no number is derived from it.");
    }
    Equivalents same = Equivalents.of(logMar.getAsDouble());
    // What a letter count means depends on how the chart was scored; 85 - 50 logMAR is one way.
    Certainty certainty =
        acuity instanceof Acuity.Letters ? Certainty.BY_CONVENTION : Certainty.COMPUTED;
    return topic.given(same, certainty, words(acuity, same));
  }

  /**
   * Returns the mean of acuities: the mean of their logMAR, which is the geometric mean of the
   * decimals, to 0.001.
   *
   * <p>Withheld where one of them measures no angle, where a suffix would have to be left out, and
   * for none.
   */
  public static Answer<BigDecimal> mean(List<Acuity> acuities) {
    List<String> facts = acuities.stream().map(one -> "acuity " + one).toList();
    List<String> because = facts.isEmpty() ? List.of("no acuity recorded") : facts;
    StatementBuilder topic = new StatementBuilder("acuity.mean", Sources.ACUITY_FORMULAS, because);
    boolean whole =
        acuities.stream()
            .allMatch(one -> AcuityScale.logMar(one).isPresent() && AcuityScale.suffix(one) == 0);
    OptionalDouble mean =
        acuities.stream().flatMapToDouble(one -> AcuityScale.logMar(one).stream()).average();
    if (!whole || mean.isEmpty()) {
      return topic.withheld("These acuities have no mean: not each is a full line on one scale.");
    }
    BigDecimal logMar = Numbers.round(mean.getAsDouble(), 3);
    return topic.given(
        logMar, Certainty.COMPUTED, "The mean of the angles is " + logMar + " logMAR.");
  }

  private static String words(Acuity acuity, Equivalents same) {
    List<String> other = new ArrayList<>();
    if (!(acuity instanceof Acuity.LogMar)) {
      other.add(same.logMar() + " logMAR");
    }
    if (!(acuity instanceof Acuity.DecimalFraction)) {
      other.add(plain(same.decimal()) + " decimal");
    }
    String line = AcuityScale.suffix(acuity) == 0 ? "" : ", as the full line without its suffix,";
    return "%s%s is %s; the detail of its smallest signs is %s wide."
        .formatted(acuity, line, String.join(" or ", other), minutes(same.minutes()));
  }

  private static String minutes(BigDecimal minutes) {
    String number = plain(minutes);
    return number + (number.equals("1") ? " minute" : " minutes") + " of arc";
  }

  private static String plain(BigDecimal number) {
    return number.stripTrailingZeros().toPlainString();
  }
}
