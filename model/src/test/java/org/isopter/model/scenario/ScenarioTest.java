package org.isopter.model.scenario;

import static org.junit.jupiter.api.Assertions.assertAll;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Set;
import java.util.stream.Stream;
import org.isopter.model.check.Consistency;
import org.isopter.model.derive.Derivations;
import org.isopter.model.derive.Derived;
import org.isopter.model.exam.Exam;
import org.isopter.model.letter.UrgencyRules;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/** What must and what must not be concluded from a record, row by row. */
class ScenarioTest {

  static Stream<Scenario> rows() {
    return Stream.of("pupils", "fields", "sight", "whole").flatMap(Scenario::rows);
  }

  @ParameterizedTest
  @MethodSource("rows")
  void saysWhatFollowsAndNothingElse(Scenario row) {
    List<String> lines = lines(ScenarioRecord.of(row.record()));
    assertAll(
        Stream.concat(
            row.says().stream()
                .map(
                    piece ->
                        () ->
                            assertTrue(
                                Scenario.isSaid(piece, lines),
                                "not said: " + piece + " in " + lines)),
            row.silent().stream()
                .map(
                    piece ->
                        () ->
                            assertFalse(
                                Scenario.isSaid(piece, lines),
                                "said: " + piece + " in " + lines))));
  }

  private static List<String> lines(Exam exam) {
    List<String> lines = new ArrayList<>();
    for (Derived one : Derivations.of(exam)) {
      lines.add(
          "%s> %s: %s (%s)"
              .formatted(
                  one.statement().id(),
                  one.site().word(),
                  one.statement().text(),
                  one.statement().certainty().words()));
    }
    for (UrgencyRules list : UrgencyRules.values()) {
      list.hints(exam).forEach(hint -> lines.add("urgency> " + hint));
    }
    Consistency.check(exam).forEach(breach -> lines.add("check> " + breach.rule().id()));
    return lines;
  }

  @Test
  void namesNoRowTwice() {
    Set<String> names = new HashSet<>();
    rows().forEach(row -> assertTrue(names.add(row.name()), row.name()));
    assertTrue(names.size() >= 150, names.size() + " rows");
  }
}
