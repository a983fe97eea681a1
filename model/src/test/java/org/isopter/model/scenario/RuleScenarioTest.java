package org.isopter.model.scenario;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.stream.Stream;
import org.isopter.model.check.Consistency;
import org.isopter.model.check.Severity;
import org.isopter.model.check.Violation;
import org.isopter.model.exam.Exam;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/**
 * Unusual records that are sound raise no alarm, and contradictory ones the rule that they break.
 */
class RuleScenarioTest {

  static Stream<Scenario> unusual() {
    return Scenario.rows("unusual");
  }

  static Stream<Scenario> contradictory() {
    return Scenario.rows("contradictory");
  }

  @ParameterizedTest
  @MethodSource("unusual")
  void raisesNoAlarmOverWhatIsSound(Scenario row) {
    Exam exam = ScenarioRecord.of(row.record());
    List<String> alarms =
        Consistency.check(exam).stream()
            .filter(violation -> violation.rule().severity() != Severity.INFORMATION)
            .map(RuleScenarioTest::id)
            .toList();
    assertEquals(List.of(), alarms);
  }

  @ParameterizedTest
  @MethodSource("contradictory")
  void findsTheRuleThatIsBroken(Scenario row) {
    List<String> found =
        Consistency.check(ScenarioRecord.of(row.record())).stream()
            .map(RuleScenarioTest::id)
            .toList();
    assertTrue(found.containsAll(row.says()), found.toString());
    assertTrue(row.silent().stream().noneMatch(found::contains), found.toString());
  }

  @Test
  void knowsEnoughOfEither() {
    assertTrue(unusual().count() >= 45);
    assertTrue(contradictory().count() >= 60);
  }

  private static String id(Violation violation) {
    return violation.rule().id();
  }
}
