package org.isopter.model.clinical.pupil;

import java.math.BigDecimal;
import java.util.List;
import java.util.Optional;
import org.isopter.model.answer.pupil.DefectGrade;
import org.isopter.model.clinical.statement.Answer;
import org.isopter.model.clinical.statement.StatementBuilder;
import org.isopter.model.finding.Citation;
import org.isopter.model.finding.Span;
import org.isopter.model.value.Unit;

/**
 * The clinical grade of a relative afferent defect and its measure in log units, kept apart: one is
 * never derived from the other. What one study found of both is quoted as that.
 */
public final class AfferentDefects {

  private static final Citation STUDY =
      new Citation(
          "Yotharak and Aui-Aree 2012, J Med Assoc Thai 95(4), n = 69; the smallest step of a"
              + " filter bar is 0.3, from memory; means of grades I to IV: Bell and others 1993, Arch"
              + " Ophthalmol 111:938, of whose grade V the eyes are blind");

  private static final List<Quoted> QUOTED =
      List.of(
          quoted(DefectGrade.GRADE_1, "0", "0.6", "94.7 %"),
          quoted(DefectGrade.GRADE_2, "0.6", "0.9", "85 %"),
          quoted(DefectGrade.GRADE_3, "1.2", "1.5", "88.3 %"),
          quoted(DefectGrade.GRADE_4, "1.8", "99", "84.6 %"));

  private static final String MEANS =
      ". In another the grades I to IV had means of 0.4, 0.7, 1.1 and 2.0 log units.";

  private AfferentDefects() {}

  /** Says what a study measured where a grade was given; no log units are derived from it. */
  public static Answer<BigDecimal> logUnits(DefectGrade grade) {
    String found =
        QUOTED.stream()
            .filter(one -> one.grade() == grade)
            .findFirst()
            .map(Quoted::words)
            .orElse("none was published for this grade");
    return StatementBuilder.of("pupils.defect-grade", STUDY, "grade " + grade.word())
        .withheld("A grade is no measure in log units. In one study: " + found + ".");
  }

  /** Says which grades a study found at a measure; no grade is derived from it. */
  public static Answer<DefectGrade> grade(BigDecimal logUnits) {
    List<String> found =
        QUOTED.stream().filter(one -> one.span().holds(logUnits)).map(Quoted::words).toList();
    String study = found.isEmpty() ? "no grade at this measure" : String.join("; ", found);
    return StatementBuilder.of("pupils.defect-log-units", STUDY, logUnits + " log units")
        .withheld("A measure in log units is no grade. In one study: " + study + MEANS);
  }

  /** Returns what a study measured in most eyes of a grade; empty for a trace. */
  public static Optional<Span> publishedSpan(DefectGrade grade) {
    return QUOTED.stream().filter(one -> one.grade() == grade).map(Quoted::span).findFirst();
  }

  private static Quoted quoted(DefectGrade grade, String least, String most, String share) {
    return new Quoted(grade, Span.of(Unit.LOG_UNIT, least, most), share);
  }

  private record Quoted(DefectGrade grade, Span span, String share) {
    String words() {
      boolean open = span.most().compareTo(BigDecimal.TEN) > 0;
      String range = open ? span.least() + " or more" : span.least() + " to " + span.most();
      return "%s log units in %s of grade %s".formatted(range, share, grade.word());
    }
  }
}
