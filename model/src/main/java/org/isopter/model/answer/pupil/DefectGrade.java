package org.isopter.model.answer.pupil;

import org.isopter.model.value.Code;
import org.isopter.model.value.Concept;

/** The clinical grade of a relative afferent defect; it does not convert to log units. */
public enum DefectGrade implements Concept {
  TRACE("trace", "Trace"),
  GRADE_1("1+", "Grade 1+"),
  GRADE_2("2+", "Grade 2+"),
  GRADE_3("3+", "Grade 3+"),
  GRADE_4("4+", "Grade 4+"),
  /** The pupil widens at once and never narrows; Bell and others 1993 call it grade V. */
  GRADE_5("5+", "Grade 5+, the pupil never narrows");

  private final String word;
  private final Code code;

  DefectGrade(String word, String display) {
    this.word = word;
    this.code = Concept.local(this, display);
  }

  @Override
  public String word() {
    return word;
  }

  @Override
  public Code code() {
    return code;
  }
}
