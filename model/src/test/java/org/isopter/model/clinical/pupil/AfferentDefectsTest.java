package org.isopter.model.clinical.pupil;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.math.BigDecimal;
import java.util.Arrays;
import java.util.stream.Stream;
import org.isopter.model.answer.pupil.DefectGrade;
import org.isopter.model.clinical.CheckRow;
import org.isopter.model.clinical.CheckTable;
import org.isopter.model.clinical.statement.Answer;
import org.isopter.model.finding.Span;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

public class AfferentDefectsTest {

  static Stream<CheckRow> rows() {
    return CheckTable.RAPD_GRADES.rows();
  }

  @ParameterizedTest
  @MethodSource("rows")
  void quotesTheStudyAndConvertsNothing(CheckRow row) {
    switch (row.name()) {
      case "gap" -> findsNoGradeInTheGap(row);
      case "trace / not graded" -> {
        assertTrue(AfferentDefects.publishedSpan(DefectGrade.TRACE).isEmpty());
        assertFalse(AfferentDefects.logUnits(DefectGrade.TRACE).isGiven());
      }
      default -> quotesTheSpan(row);
    }
  }

  private static void findsNoGradeInTheGap(CheckRow row) {
    double middle = (row.number("ndf_log_min") + row.number("ndf_log_max")) / 2;
    Answer<DefectGrade> answer = AfferentDefects.grade(BigDecimal.valueOf(middle));
    assertFalse(answer.isGiven());
    assertTrue(answer.statement().text().contains("no grade at this measure"));
  }

  private static void quotesTheSpan(CheckRow row) {
    DefectGrade grade =
        Arrays.stream(DefectGrade.values())
            .filter(one -> one.word().equals(row.name()))
            .findFirst()
            .orElseThrow();
    Span span = AfferentDefects.publishedSpan(grade).orElseThrow();
    checkEnd(row, "ndf_log_min", span.least());
    checkEnd(row, "ndf_log_max", span.most());
    Answer<BigDecimal> answer = AfferentDefects.logUnits(grade);
    assertFalse(answer.isGiven());
    String share = row.cell("text").replaceAll(".*\\(([0-9.]+)%.*", "$1 %");
    assertTrue(answer.statement().text().contains(share), answer.statement().text());
    assertFalse(AfferentDefects.grade(span.least()).isGiven());
  }

  private static void checkEnd(CheckRow row, String column, BigDecimal end) {
    if (!row.isBlank(column)) {
      assertEquals(0, end.compareTo(new BigDecimal(row.cell(column))), row.toString());
    }
  }
}
