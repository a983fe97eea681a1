package org.isopter.model.letter;

import java.util.EnumSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.stream.Collectors;
import org.isopter.model.check.BreachKind;
import org.isopter.model.check.Consistency;
import org.isopter.model.check.ConsistencyRule;
import org.isopter.model.check.Severity;
import org.isopter.model.exam.Exam;
import org.isopter.model.text.Eyes;
import org.isopter.model.text.PlainWords;
import org.isopter.model.value.Site;

/**
 * What is recorded and does not agree, for the reader of a letter: of two entries one may be of the
 * other eye, and what follows from it too. What is incomplete, or only worth a second look, is for
 * who keeps the record.
 */
final class Disagreements {

  private Disagreements() {}

  /** Returns what breaks a rule, a sentence for each rule with its eyes before it. */
  static List<String> lines(Exam exam) {
    Map<ConsistencyRule, Set<Eyes>> broken = new LinkedHashMap<>();
    Consistency.check(exam).stream()
        .filter(one -> isForTheReader(one.rule()))
        .forEach(
            one ->
                broken
                    .computeIfAbsent(one.rule(), any -> EnumSet.noneOf(Eyes.class))
                    .add(eyes(one.site())));
    return broken.entrySet().stream()
        .map(one -> before(one.getValue()) + one.getKey().what())
        .toList();
  }

  private static boolean isForTheReader(ConsistencyRule rule) {
    return rule.severity() != Severity.INFORMATION && rule.kind() != BreachKind.INCOMPLETE;
  }

  private static Eyes eyes(Site site) {
    return site == Site.BOTH ? Eyes.PAIR : Eyes.of(site);
  }

  private static String before(Set<Eyes> eyes) {
    String words =
        Eyes.joined(eyes).stream()
            .map(Eyes::words)
            .filter(one -> !one.isEmpty())
            .collect(Collectors.joining(" and "));
    return words.isEmpty() ? "" : PlainWords.capital(words) + ": ";
  }
}
