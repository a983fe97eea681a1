package org.isopter.model.clinical.acuity;

import java.math.BigDecimal;
import java.math.RoundingMode;
import java.util.Optional;
import org.isopter.model.catalogue.AcuityReading;
import org.isopter.model.clinical.statement.Answer;
import org.isopter.model.clinical.statement.Certainty;
import org.isopter.model.clinical.statement.Sources;
import org.isopter.model.clinical.statement.StatementBuilder;
import org.isopter.model.value.Acuity;

/**
 * The logMAR of a line with some letters more or less.
 *
 * <p>A letter is worth 0.1 logMAR divided by the letters of a line, and only on a chart that is
 * stated to have so many letters on each line, and on a line of the 0.1 series. On any other chart
 * a suffix has no defined numerical value: 6/6+5 would come out better than 6/5.
 */
public final class PartialLine {

  private static final BigDecimal LINE = new BigDecimal("0.1");

  private PartialLine() {}

  /**
   * Returns the logMAR to 0.001, counted from the nominal line where there is a suffix.
   *
   * <p>Withheld where the suffix has no value, where the line was read in part, and where the
   * notation has no logMAR.
   */
  public static Answer<BigDecimal> logMar(AcuityReading reading) {
    if (reading.isInPart()) {
      return StatementBuilder.of("acuity.partial-line", Sources.LETTER_VALUE, reading.words())
          .withheld("A line that was read in part has no numerical value. It is kept as written.");
    }
    return reading.acuity() instanceof Acuity.Fraction line && line.letters() != 0
        ? withSuffix(line, reading.lettersPerLine())
        : AcuityEquivalents.of(reading.acuity()).map(AcuityEquivalents.Equivalents::logMar);
  }

  private static Answer<BigDecimal> withSuffix(Acuity.Fraction line, Optional<Integer> letters) {
    StatementBuilder topic =
        StatementBuilder.of(
            "acuity.partial-line",
            Sources.LETTER_VALUE,
            "acuity " + line,
            "letters per line: " + letters.map(String::valueOf).orElse("not stated"));
    Optional<NominalLine> nominal =
        AcuityScale.logMar(line).stream().boxed().findFirst().flatMap(NominalLine::near);
    if (letters.isEmpty()) {
      return topic.withheld(
          "The suffix has no numerical value: the chart is not stated to have a fixed number of"
              + " letters on each line. It is kept as written.");
    }
    if (nominal.isEmpty() || Math.abs(line.letters()) >= letters.get()) {
      return topic.withheld(
          "The suffix has no numerical value: the line is none of a chart that steps by 0.1"
              + " logMAR, or the suffix spans a whole line. It is kept as written.");
    }
    return counted(topic, line, nominal.get(), letters.get());
  }

  private static Answer<BigDecimal> counted(
      StatementBuilder topic, Acuity.Fraction line, NominalLine nominal, int perLine) {
    BigDecimal shift =
        LINE.multiply(BigDecimal.valueOf(line.letters()))
            .divide(BigDecimal.valueOf(perLine), 3, RoundingMode.HALF_UP);
    BigDecimal logMar = nominal.logMar().subtract(shift);
    String text =
        "%s counted by letters is %s logMAR, from the nominal line of %s logMAR."
            .formatted(line, logMar, nominal.logMar());
    return topic.given(logMar, Certainty.COMPUTED, text);
  }
}
