package org.isopter.model.check;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;
import static org.junit.jupiter.api.DynamicTest.dynamicTest;

import java.util.List;
import java.util.Random;
import java.util.Set;
import java.util.TreeSet;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.isopter.model.catalogue.Catalogue;
import org.isopter.model.exam.Exam;
import org.isopter.model.exam.ExamSampler;
import org.isopter.model.exam.Fact;
import org.junit.jupiter.api.DynamicTest;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.TestFactory;

/**
 * Every rule has an examination that breaks it, and perhaps others that are named, and one that
 * keeps it.
 */
class RulePairsTest {

  @TestFactory
  Stream<DynamicTest> breaksTheRuleAndNoOther() {
    return Rules.all().stream().map(rule -> dynamicTest(rule.id(), () -> breaks(rule)));
  }

  private static void breaks(ConsistencyRule rule) {
    Set<String> expected = new TreeSet<>(RuleCases.of(rule).also());
    expected.add(rule.id());
    assertEquals(expected, reported(RuleCases.of(rule).breaks()));
  }

  @TestFactory
  Stream<DynamicTest> keepsTheRule() {
    return Rules.all().stream().map(rule -> dynamicTest(rule.id(), () -> keeps(rule)));
  }

  private static void keeps(ConsistencyRule rule) {
    assertFalse(reported(RuleCases.of(rule).keeps()).contains(rule.id()), rule.id());
  }

  /** Nothing may hang on which eye a rule was written with in mind. */
  @TestFactory
  Stream<DynamicTest> tellsTheSameOfTheOtherEye() {
    return Rules.all().stream().map(rule -> dynamicTest(rule.id(), () -> mirrored(rule)));
  }

  private static void mirrored(ConsistencyRule rule) {
    Exam exam = RuleCases.of(rule).breaks();
    assertEquals(reported(exam), reported(Mirror.of(exam)));
  }

  /** The same record with a remark at every fact keeps just the rules that a remark settles. */
  @TestFactory
  Stream<DynamicTest> heedsARemarkWhereItSaysSo() {
    return Rules.all().stream().map(rule -> dynamicTest(rule.id(), () -> remarked(rule)));
  }

  private static void remarked(ConsistencyRule rule) {
    Exam exam = RuleCases.of(rule).breaks();
    List<Fact<?>> facts =
        exam.facts().stream()
            .<Fact<?>>map(fact -> fact.remarks(List.of("Looked at twice.")))
            .toList();
    boolean reported = reported(new Exam(exam.header(), facts)).contains(rule.id());
    assertEquals(rule.isSettledByRemark(), !reported);
  }

  /**
   * A rule is broken at a finding that it says it looks at, also where it is broken by the way: one
   * is not looked at where none of its findings is stated.
   */
  @Test
  void isBrokenAtAFindingThatItLooksAt() {
    ExamSampler sampler = new ExamSampler(Catalogue.standard().all(), new Random(20261128));
    List<Exam> exams =
        Stream.concat(
                RuleCases.ALL.values().stream().map(RuleCase::breaks),
                Stream.generate(sampler::next).limit(400))
            .toList();
    Set<String> broken = new TreeSet<>();
    for (Exam exam : exams) {
      for (Violation violation : Consistency.check(exam)) {
        broken.add(violation.rule().id());
        assertTrue(
            violation.rule().paths().stream()
                .anyMatch(path -> (violation.path() + ".").startsWith(path + ".")),
            () -> violation.rule() + " at " + violation.path());
      }
    }
    assertEquals(RuleCases.ALL.keySet(), broken);
  }

  @Test
  void thereIsNoCaseWithoutARule() {
    assertEquals(
        Rules.all().stream()
            .map(ConsistencyRule::id)
            .collect(Collectors.toCollection(TreeSet::new)),
        RuleCases.ALL.keySet());
  }

  private static Set<String> reported(Exam exam) {
    return Consistency.check(exam).stream()
        .map(Violation::rule)
        .map(ConsistencyRule::id)
        .collect(Collectors.toCollection(TreeSet::new));
  }
}
