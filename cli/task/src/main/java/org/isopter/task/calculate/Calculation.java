package org.isopter.task.calculate;

import java.util.List;
import java.util.function.Function;
import org.isopter.model.clinical.statement.Statement;
import org.isopter.model.value.Concept;
import org.isopter.model.value.Fault;
import org.isopter.model.value.Result;

/** A calculation that needs no record. */
public enum Calculation {
  /** A lens with the other sign of cylinder. */
  TRANSPOSE("LENS", 1, 1, LensCalculations::transpose),
  /** A spectacle lens at the cornea; the vertex distance in mm. */
  VERTEX("LENS MM", 2, 2, LensCalculations::vertex),
  /** Prism dioptres in degrees, or degrees, as 11.3deg, in prism dioptres. */
  PRISM("DIOPTRES|DEGREESdeg", 1, 1, LensCalculations::prism),
  /** Whether published figures for driving are reached: both eyes together, or each of two. */
  DRIVING("ACUITY [ACUITY]", 1, 2, AcuityCalculations::driving),
  /** The numbers that published conventions put in for counting fingers and hand movements. */
  LOW_VISION("ACUITY", 1, 1, AcuityCalculations::lowVision),
  /** Stages of glaucomatous field loss by the mean deviation in dB; loss is negative. */
  FIELD_STAGE("DB", 1, 1, FieldCalculations::stage),
  /** Whether wrong answers of a perimeter's test reach the limits from which makers flag it. */
  FIELD_RELIABILITY("KIND ERRORS TRIALS", 3, 3, FieldCalculations::reliability),
  /** Whether the threshold of a point, in dB, is too high to be seen. */
  FIELD_THRESHOLD("DB", 1, 1, FieldCalculations::threshold),
  /** What an index of a field test says: its name, and its value in % or dB. */
  FIELD_INDEX("NAME VALUE", 2, 2, FieldCalculations::index),
  /** Whether the field of both eyes together, in degrees, reaches published figures for driving. */
  DRIVING_FIELD("LEFT RIGHT UP DOWN defect|no-defect", 5, 5, FieldCalculations::driving),
  /** Whether print that was read at 40 cm with the correction worn is near vision impairment. */
  NEAR_IMPAIRMENT("ACUITY", 1, 1, AcuityCalculations::nearImpairment),
  /** The level of the international clinical scale of diabetic retinopathy. */
  RETINOPATHY("SIGN...", 1, 6, GradeCalculations::retinopathy);

  private final String values;
  private final int least;
  private final int most;
  private final Function<List<String>, Result<List<Statement>>> function;

  Calculation(
      String values,
      int least,
      int most,
      Function<List<String>, Result<List<Statement>>> function) {
    this.values = values;
    this.least = least;
    this.most = most;
    this.function = function;
  }

  /** Returns what the calculation takes, for a message: {@code vertex LENS MM}. */
  public String usage() {
    return this + " " + values;
  }

  /**
   * Calculates.
   *
   * @param given the values as {@link #usage} names them: a lens as {@code -2.00 -1.50 x30} in
   *     dioptres and degrees, an acuity as {@code 6/12} or {@code CF 30 cm}
   * @return what follows, each with its source; refused where a value cannot be read or has no
   *     answer
   */
  public Result<List<Statement>> of(List<String> given) {
    return given.size() < least || given.size() > most
        ? Result.refused(Fault.of("", given.size() + " values", usage()))
        : function.apply(given);
  }

  /** Returns the word of the calculation. */
  @Override
  public String toString() {
    return Concept.word(this);
  }
}
