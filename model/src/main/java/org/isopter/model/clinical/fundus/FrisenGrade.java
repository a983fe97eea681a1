package org.isopter.model.clinical.fundus;

import java.util.Arrays;
import org.isopter.model.clinical.statement.Certainty;
import org.isopter.model.clinical.statement.Statement;
import org.isopter.model.clinical.statement.StatementBuilder;
import org.isopter.model.finding.Citation;
import org.isopter.model.value.Fault;
import org.isopter.model.value.Result;

/** A grade of the modified Frisen scale with its key feature; for papilloedema only. */
public enum FrisenGrade {
  GRADE_0("normal, no halo"),
  GRADE_1("C-shaped halo with temporal gap"),
  GRADE_2("circumferential halo; no major vessel obscuration"),
  GRADE_3(">=1 segment of a major vessel obscured as it LEAVES the disc"),
  GRADE_4("a segment of a major vessel totally obscured ON the disc"),
  GRADE_5("obscuration of all vessels on and leaving the disc");

  private static final Citation SOURCE =
      new Citation("modified Frisen table, Neuro-Ophthalmology 2023;47:177");

  private final String keyFeature;

  FrisenGrade(String keyFeature) {
    this.keyFeature = keyFeature;
  }

  /** Returns the grade with a number, or a refusal outside 0 to 5. */
  public static Result<FrisenGrade> of(int number) {
    return Arrays.stream(values())
        .filter(grade -> grade.number() == number)
        .findFirst()
        .map(Result::ok)
        .orElseGet(() -> Result.refused(Fault.of("frisen-grade", number + "", "0 to 5")));
  }

  /** Returns the number, 0 to 5. */
  public int number() {
    return Character.digit(name().charAt(name().length() - 1), 10);
  }

  /** Returns the key feature of the grade. */
  public String keyFeature() {
    return keyFeature;
  }

  /** Returns what the grade says. */
  public Statement statement() {
    return StatementBuilder.of("disc.frisen", SOURCE, "Frisen grade " + number())
        .say(
            Certainty.BY_RULE,
            "Frisén grade %s: %s. The scale is for papilloedema.".formatted(number(), sentence()));
  }

  /** Returns the key feature without the marks and capitals of the table. */
  private String sentence() {
    return keyFeature
        .replace(">=1 segment", "at least one segment")
        .replace("LEAVES", "leaves")
        .replace("ON the", "on the");
  }
}
