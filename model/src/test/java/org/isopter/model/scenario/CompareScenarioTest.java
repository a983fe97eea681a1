package org.isopter.model.scenario;

import static org.junit.jupiter.api.Assertions.assertAll;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.time.OffsetDateTime;
import java.util.List;
import java.util.stream.Stream;
import org.isopter.model.clinical.statement.Statement;
import org.isopter.model.compare.Change;
import org.isopter.model.compare.Comparison;
import org.isopter.model.exam.Exam;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/** What must and must not be said of two examinations; an arrow stands between them. */
class CompareScenarioTest {

  private static final OffsetDateTime MARCH = OffsetDateTime.parse("2026-03-02T09:00:00+01:00");

  static Stream<Scenario> rows() {
    return Scenario.rows("compare");
  }

  @ParameterizedTest
  @MethodSource("rows")
  void saysWhatChangedAndNothingElse(Scenario row) {
    String[] records = row.record().split(" => ", -1);
    Exam before = ScenarioRecord.of("before", MARCH, records[0]);
    Exam now = ScenarioRecord.of("now", MARCH.plusMonths(3), records[1]);
    List<String> lines =
        Comparison.of(before, now).orThrow().changes().stream()
            .map(CompareScenarioTest::line)
            .toList();
    assertAll(
        Stream.concat(
            row.says().stream()
                .map(piece -> () -> assertTrue(Scenario.isSaid(piece, lines), lines.toString())),
            row.silent().stream()
                .map(piece -> () -> assertFalse(Scenario.isSaid(piece, lines), lines.toString()))));
  }

  private static String line(Change change) {
    return "%s> %s: %s; %s; %s"
        .formatted(
            change.finding().id(),
            change.site().word(),
            change.kind().words(),
            change.by().map(Object::toString).orElse("no difference"),
            change.verdict().map(Statement::text).orElse("no verdict"));
  }
}
