package org.isopter.mapper.table;

import java.time.OffsetDateTime;
import java.util.List;
import java.util.Optional;
import org.isopter.model.exam.Exam;
import org.isopter.model.value.Absence;
import org.isopter.model.value.Code;
import org.isopter.model.value.Concept;
import org.isopter.model.value.Quantity;
import org.isopter.model.value.Site;

/**
 * One value of the long table: of one finding at one eye and time, or of one part of it.
 *
 * @param exam the examination
 * @param fact the name of the fact, or of the derived statement, within the examination
 * @param finding the id of the finding or of the statement
 * @param part the part of the finding; empty where the whole is absent
 * @param code the most specific code of the finding
 * @param partCode the code of the part; empty for the value itself
 * @param eye the eye
 * @param at when
 * @param value what was recorded, and why nothing was
 * @param method the technique
 * @param conditions what tells it from others of its kind at the eye, such as the correction
 * @param seen whether it was seen; otherwise it was derived
 * @param origin where it was read
 * @param device the instrument as written
 * @param remarks what else was said
 */
public record FindingRow(
    Exam exam,
    String fact,
    String finding,
    Optional<String> part,
    Code code,
    Optional<Code> partCode,
    Site eye,
    OffsetDateTime at,
    Value value,
    Optional<Concept> method,
    List<String> conditions,
    boolean seen,
    FactOrigin origin,
    Optional<String> device,
    List<String> remarks) {

  public FindingRow {
    remarks = List.copyOf(remarks);
    conditions = List.copyOf(conditions);
  }

  /**
   * A value in the forms of the table.
   *
   * @param text as recorded
   * @param notation which of several notations
   * @param number in the usual unit
   * @param acuity what else an acuity is in numbers
   * @param coded the answer
   * @param absent why there is none
   */
  public record Value(
      Optional<String> text,
      Optional<Concept> notation,
      Optional<Quantity> number,
      Optional<AcuityNumber> acuity,
      Optional<Concept> coded,
      Optional<Absence> absent) {

    /** Returns this value, whose number is the limit beyond which the value itself lies. */
    Value limit(AcuityNumber limit) {
      return new Value(text, notation, Optional.empty(), Optional.of(limit), coded, absent);
    }

    static Value absent(Absence reason) {
      return new Value(
          Optional.empty(),
          Optional.empty(),
          Optional.empty(),
          Optional.empty(),
          Optional.empty(),
          Optional.of(reason));
    }

    static Value of(String text, Optional<Quantity> number) {
      return new Value(
          Optional.of(text),
          Optional.empty(),
          number,
          Optional.empty(),
          Optional.empty(),
          Optional.empty());
    }
  }
}
