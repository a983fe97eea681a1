package org.isopter.mapper.check;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.DynamicTest.dynamicTest;

import java.nio.file.Path;
import java.util.List;
import java.util.Set;
import java.util.TreeSet;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.isopter.model.check.Consistency;
import org.isopter.model.check.ConsistencyRule;
import org.isopter.model.check.Rules;
import org.isopter.model.check.Violation;
import org.isopter.model.exam.Exam;
import org.isopter.model.exam.Fact;
import org.junit.jupiter.api.DynamicTest;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.TestFactory;

/**
 * Every rule has a record that breaks it and one that keeps it. The first line of the first names
 * what else it breaks.
 */
class RulePairsTest {

  private static final Pattern BREAKS =
      Pattern.compile(
          "# Breaks the rule [a-z0-9-]+(?:, and no other|; with it: ([a-z0-9, -]+))\\.");

  @TestFactory
  Stream<DynamicTest> breaksTheRuleAndNoOther() {
    return Rules.all().stream().map(rule -> dynamicTest(rule.id(), () -> breaks(rule)));
  }

  private static void breaks(ConsistencyRule rule) {
    Path file = RecordFiles.RULES.resolve(rule.id() + "-fail.yaml");
    assertEquals(expected(rule, RecordFiles.text(file)), reported(RecordFiles.exam(file)));
  }

  @TestFactory
  Stream<DynamicTest> keepsTheRule() {
    return Rules.all().stream().map(rule -> dynamicTest(rule.id(), () -> keeps(rule)));
  }

  private static void keeps(ConsistencyRule rule) {
    Path file = RecordFiles.RULES.resolve(rule.id() + "-pass.yaml");
    assertFalse(reported(RecordFiles.exam(file)).contains(rule.id()), file.toString());
  }

  /** Nothing may hang on which eye a rule was written with in mind. */
  @TestFactory
  Stream<DynamicTest> tellsTheSameOfTheOtherEye() {
    return Rules.all().stream().map(rule -> dynamicTest(rule.id(), () -> mirrored(rule)));
  }

  private static void mirrored(ConsistencyRule rule) {
    Exam exam = RecordFiles.exam(RecordFiles.RULES.resolve(rule.id() + "-fail.yaml"));
    assertEquals(reported(exam), reported(Mirror.of(exam)));
  }

  /** The same record with a remark at every fact keeps just the rules that a remark settles. */
  @TestFactory
  Stream<DynamicTest> heedsARemarkWhereItSaysSo() {
    return Rules.all().stream().map(rule -> dynamicTest(rule.id(), () -> remarked(rule)));
  }

  private static void remarked(ConsistencyRule rule) {
    Exam exam = RecordFiles.exam(RecordFiles.RULES.resolve(rule.id() + "-fail.yaml"));
    List<Fact<?>> facts =
        exam.facts().stream()
            .<Fact<?>>map(fact -> fact.remarks(List.of("Looked at twice.")))
            .toList();
    boolean reported = reported(new Exam(exam.header(), facts)).contains(rule.id());
    assertEquals(rule.isSettledByRemark(), !reported);
  }

  @Test
  void thereIsNoRecordWithoutARule() {
    Set<String> wanted =
        Rules.all().stream()
            .flatMap(rule -> Stream.of(rule.id() + "-fail.yaml", rule.id() + "-pass.yaml"))
            .collect(Collectors.toCollection(TreeSet::new));
    List<String> there =
        RecordFiles.in(RecordFiles.RULES).stream()
            .map(file -> String.valueOf(file.getFileName()))
            .toList();
    assertEquals(List.copyOf(wanted), there);
  }

  private static Set<String> expected(ConsistencyRule rule, String text) {
    Matcher line = BREAKS.matcher(text);
    assertEquals(true, line.lookingAt(), text);
    Set<String> ids = new TreeSet<>(Set.of(rule.id()));
    if (line.group(1) != null) {
      ids.addAll(Pattern.compile(", ").splitAsStream(line.group(1)).toList());
    }
    return ids;
  }

  private static Set<String> reported(Exam exam) {
    return Consistency.check(exam).stream()
        .map(Violation::rule)
        .map(ConsistencyRule::id)
        .collect(Collectors.toCollection(TreeSet::new));
  }
}
