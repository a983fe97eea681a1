package org.isopter.model.check;

import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.stream.Collectors;
import org.isopter.model.text.RecordText;

/** The page about the rules, made from the rules and the facts that break them. */
final class RulesPage {

  private static final String HEAD =
      """
      # Consistency rules

      <!-- Made from the rules; see RulesPageTest. -->

      What a record that can be read may still get wrong. The rules speak of what is stated: a fact
      that is not there is never taken for normal, and facts with different times are never held
      against one another. They tell of the record, not of the eye: that no rule speaks says nothing
      about health. Information for record-keeping; not a diagnosis, not triage.

      A rule is *impossible* (the facts cannot all be true), *contradictory* (they speak against one
      another), *incomplete* (a fact lacks what makes sense of it) or *implausible* (it may be true
      and seldom is). An *error* must be put right before the record is sent; a *warning* is probably
      a slip; an *information* costs a second look.

      `isopter check` tells of them all; only errors refuse a record. What is known to be right is
      left out by a file of suppressions (`--suppress known.yaml`); one that leaves out nothing is
      reported, so that the file does not outlive its reasons:

      ```yaml
      - rule: nystagmus-phase-against-kind
        file: ward-7-0412.yaml        # the end of the name; may be left out
        path: findings.nystagmus.both # with all below it; may be left out
        reason: Filmed; two examiners agree.
      ```

      """;

  private RulesPage() {}

  static String text() {
    return HEAD
        + counts()
        + Rules.all().stream().map(RulesPage::section).collect(Collectors.joining("\n"));
  }

  private static String counts() {
    String rows =
        Arrays.stream(BreachKind.values()).map(RulesPage::row).collect(Collectors.joining());
    return "| "
        + Rules.all().size()
        + " rules | error | warning | information |\n|---|---|---|---|\n"
        + rows
        + "\n";
  }

  private static String row(BreachKind kind) {
    return Arrays.stream(Severity.values())
        .map(severity -> Long.toString(count(kind, severity)))
        .collect(Collectors.joining(" | ", "| " + kind.word() + " | ", " |\n"));
  }

  private static long count(BreachKind kind, Severity severity) {
    return Rules.all().stream()
        .filter(rule -> rule.kind() == kind && rule.severity() == severity)
        .count();
  }

  private static String section(ConsistencyRule rule) {
    return """
        ## %s

        %s, %s. %s %s

        Source: %s. Looks at %s. Wanted: %s. What to do: %s.%s

        ```text
        %s
        ```

        saw %s, at `%s`
        """
        .formatted(
            rule.id(),
            capital(rule.kind().word()),
            rule.severity().word(),
            rule.what(),
            rule.why(),
            rule.source().text(),
            rule.paths().stream().collect(Collectors.joining("`, `", "`", "`")),
            rule.wanted(),
            rule.suggestion(),
            rule.isSettledByRemark() ? " A remark at the fact settles it." : "",
            facts(rule),
            example(rule).seen(),
            example(rule).path());
  }

  private static String capital(String word) {
    return word.substring(0, 1).toUpperCase(Locale.ROOT) + word.substring(1);
  }

  private static String facts(ConsistencyRule rule) {
    return RuleCases.of(rule).breaks().facts().stream()
        .map(RecordText::of)
        .collect(Collectors.joining("\n"));
  }

  private static Violation example(ConsistencyRule rule) {
    return Consistency.check(RuleCases.of(rule).breaks(), List.of(rule)).get(0);
  }
}
