package org.isopter.model.clinical.lens;

import java.math.BigDecimal;
import org.isopter.model.clinical.statement.Answer;
import org.isopter.model.clinical.statement.Certainty;
import org.isopter.model.clinical.statement.Numbers;
import org.isopter.model.clinical.statement.StatementBuilder;
import org.isopter.model.finding.Citation;
import org.isopter.model.value.Result;

/** What follows from a lens, as statements: the numbers are those of the classes it calls. */
public final class LensAnswers {

  private static final Citation OPTICS = new Citation("definition: sphere and half the cylinder");
  private static final Citation VECTORS =
      new Citation("Thibos 1997, Optom Vis Sci 74:367; formulas from memory");
  private static final Citation VERTEX =
      new Citation("F / (1 - d F) on each principal meridian; several published calculators");
  private static final Citation PRISM =
      new Citation("100 tan(angle), by definition: Bicas, S0004-27492014000500275");

  private LensAnswers() {}

  /** Returns the spherical equivalent in dioptres, exact. */
  public static Answer<BigDecimal> sphericalEquivalent(Lens lens) {
    BigDecimal power = lens.sphericalEquivalent();
    return StatementBuilder.of("lens.spherical-equivalent", OPTICS, "lens " + lens)
        .given(
            power,
            Certainty.COMPUTED,
            "The spherical equivalent is " + signed(shortened(power)) + " D.");
  }

  /** Returns the power vector; the statement gives it to 0.01 dioptre. */
  public static Answer<PowerVector> powerVector(Lens lens) {
    PowerVector vector = PowerVector.of(lens);
    String text =
        "As a power vector it is M %s, J0 %s, J45 %s D."
            .formatted(
                signed(Numbers.round(vector.m(), 2)),
                signed(Numbers.round(vector.j0(), 2)),
                signed(Numbers.round(vector.j45(), 2)));
    return StatementBuilder.of("lens.power-vector", VECTORS, "lens " + lens)
        .given(vector, Certainty.COMPUTED, text);
  }

  /** Two decimals, and a third only where it is not nought. */
  private static BigDecimal shortened(BigDecimal power) {
    BigDecimal digits = power.stripTrailingZeros();
    return digits.setScale(Math.max(2, digits.scale()));
  }

  /** A power is written with its sign, for a lens of the other sign is another one. */
  private static String signed(BigDecimal power) {
    return power.signum() > 0 ? "+" + power : power.toString();
  }

  /** Returns the lens with the other sign of cylinder. */
  public static Answer<Lens> transposed(Lens lens) {
    Lens other = lens.transposed();
    return StatementBuilder.of("lens.transposed", VECTORS, "lens " + lens)
        .given(other, Certainty.COMPUTED, "Transposed it is " + other + ".");
  }

  /** Says whether two lenses are one, however written. */
  public static Answer<Boolean> isSame(Lens one, Lens two) {
    boolean same = one.isSameAs(two);
    return StatementBuilder.of("lens.same", VECTORS, "lens " + one, "lens " + two)
        .given(
            same,
            Certainty.COMPUTED,
            same ? "Both are one lens: their power vectors are equal." : "They are two lenses.");
  }

  /** Returns the lens at the cornea, or a refusal as {@link Vertex#atCornea} has it. */
  public static Result<Answer<Lens>> atCornea(Lens lens, BigDecimal vertexMm) {
    return Vertex.atCornea(lens, vertexMm)
        .map(
            cornea ->
                StatementBuilder.of(
                        "lens.vertex",
                        VERTEX,
                        "lens " + lens,
                        "vertex distance " + vertexMm + " mm")
                    .given(
                        cornea,
                        Certainty.COMPUTED,
                        "At the cornea it is %s, to the nearest quarter %s."
                            .formatted(cornea, Vertex.nearestQuarter(cornea))));
  }

  /** Returns the degrees of a deviation in prism dioptres, to 0.01. */
  public static Answer<BigDecimal> degrees(BigDecimal prismDioptres) {
    BigDecimal degrees = PrismAngle.degrees(prismDioptres);
    return StatementBuilder.of("lens.prism-angle", PRISM, prismDioptres + " PD")
        .given(degrees, Certainty.COMPUTED, "The deviation is " + degrees + " degrees.");
  }

  /** Returns the prism dioptres of degrees, to 0.1, or a refusal from 90 degrees on. */
  public static Result<Answer<BigDecimal>> prismDioptres(BigDecimal degrees) {
    return PrismAngle.prismDioptres(degrees)
        .map(
            prism ->
                StatementBuilder.of("lens.prism-angle", PRISM, degrees + " deg")
                    .given(
                        prism,
                        Certainty.COMPUTED,
                        "The deviation is " + prism + " prism dioptres."));
  }
}
