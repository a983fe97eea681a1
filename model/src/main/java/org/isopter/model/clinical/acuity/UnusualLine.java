package org.isopter.model.clinical.acuity;

import java.util.Optional;
import org.isopter.model.clinical.statement.Certainty;
import org.isopter.model.clinical.statement.Statement;
import org.isopter.model.clinical.statement.StatementBuilder;
import org.isopter.model.finding.Citation;
import org.isopter.model.value.Acuity;
import org.isopter.model.value.AcuityText;

/** A remark on a fraction that no usual chart prints, such as 6/20 in metres. */
public final class UnusualLine {

  private UnusualLine() {}

  /**
   * Returns the remark, or nothing where the fraction is plain.
   *
   * <p>A fraction is unusual when its unit cannot be told without being named.
   */
  public static Optional<Statement> remark(Acuity.Fraction line) {
    String bare = line.numerator().toPlainString() + "/" + line.denominator().toPlainString();
    String text =
        line + " is no line of a usual chart in that unit; metres and feet may have been mixed.";
    return AcuityText.parse(bare).isOk()
        ? Optional.empty()
        : Optional.of(
            StatementBuilder.of("acuity.unusual-line", Citation.COMMON_PRACTICE, "acuity " + line)
                .say(Certainty.BY_CONVENTION, text));
  }
}
