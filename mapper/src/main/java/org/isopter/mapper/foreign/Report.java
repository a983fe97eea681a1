package org.isopter.mapper.foreign;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import org.isopter.model.value.Fault;

/** What became of the resources of an input, as a table for people and as lines for programs. */
public final class Report {

  private long exams;
  private long unreadable;
  private final Map<String, Long> outcomes = new TreeMap<>();
  private final Map<String, Long> rules = new TreeMap<>();
  private final Map<String, Long> reasons = new TreeMap<>();

  /** Counts what came of a document. */
  public void add(Reading reading) {
    exams += reading.exams().size();
    reading.exams().forEach(exam -> count(rules, exam.rule()));
    reading.resources().forEach(read -> add(read.treated()));
  }

  /** Counts a document that could not be read. */
  public void addUnreadable() {
    unreadable++;
  }

  /** Adds what another report counted. */
  public void add(Report other) {
    exams += other.exams;
    unreadable += other.unreadable;
    other.outcomes.forEach((key, n) -> outcomes.merge(key, n, Long::sum));
    other.rules.forEach((key, n) -> rules.merge(key, n, Long::sum));
    other.reasons.forEach((key, n) -> reasons.merge(key, n, Long::sum));
  }

  /** Returns how many resources were {@code exact}, {@code translated} or {@code kept}. */
  public long count(String word) {
    return outcomes.getOrDefault(word, 0L);
  }

  /** Returns how many examinations there are. */
  public long exams() {
    return exams;
  }

  /** Returns how many documents or lines could not be read. */
  public long unreadable() {
    return unreadable;
  }

  /** Returns the counts as lines of text: outcomes, then rules, then reasons. */
  public String counts() {
    StringBuilder text = new StringBuilder();
    line(text, "examinations", exams);
    for (String word : List.of("exact", "translated", "kept")) {
      line(text, word, count(word));
    }
    line(text, "unreadable", unreadable);
    rules.forEach((rule, n) -> line(text, "  rule " + rule, n));
    reasons.forEach((why, n) -> line(text, "  kept " + why, n));
    return text.toString();
  }

  /** Returns a table of the resources of a document, one line each. */
  public static String table(Reading reading) {
    StringBuilder table = new StringBuilder();
    for (ReadResource read : reading.resources()) {
      table.append(
          "%-40s %-10s %s%n".formatted(read.name(), read.treated().word(), why(read.treated())));
    }
    return table.toString();
  }

  /**
   * Returns an OperationOutcome for each resource, each on one line.
   *
   * @param source the name of the file or the line, for the expression
   */
  public static List<String> outcomes(String source, Reading reading) {
    return reading.resources().stream().map(read -> outcome(source, read)).toList();
  }

  /** Returns an OperationOutcome on one line for a document that could not be read. */
  public static String unreadable(String source, Fault fault) {
    return outcome(
        List.of(issue("error", "structure", Why.UNREADABLE.word(), fault.toString(), source)));
  }

  private static String outcome(String source, ReadResource read) {
    String at = source + " " + read.name();
    List<Raw> issues = new ArrayList<>();
    if (read.treated() instanceof Treated.Kept kept) {
      kept.reasons()
          .forEach(
              r ->
                  issues.add(
                      issue("warning", "not-supported", r.why().word(), r.fault().toString(), at)));
    } else {
      issues.add(
          issue("information", "informational", read.treated().word(), why(read.treated()), at));
      if (read.treated() instanceof Treated.Translated translated) {
        translated
            .reasons()
            .forEach(
                r ->
                    issues.add(
                        issue(
                            "warning", "not-supported", r.why().word(), r.fault().toString(), at)));
      }
    }
    return outcome(issues);
  }

  private static String outcome(List<Raw> issues) {
    Map<String, Raw> outcome = new LinkedHashMap<>();
    outcome.put("resourceType", Raw.of("OperationOutcome"));
    outcome.put("issue", Raw.of(issues));
    return RawJson.write(new Raw.Obj(outcome));
  }

  private static Raw issue(String severity, String code, String word, String text, String at) {
    Map<String, Raw> issue = new LinkedHashMap<>();
    issue.put("severity", Raw.of(severity));
    issue.put("code", Raw.of(code));
    issue.put("details", new Raw.Obj(Map.of("text", Raw.of(word))));
    if (!text.isEmpty()) {
      issue.put("diagnostics", Raw.of(text));
    }
    issue.put("expression", Raw.of(List.of(Raw.of(at))));
    return new Raw.Obj(issue);
  }

  private static String why(Treated treated) {
    if (treated instanceof Treated.Kept kept) {
      return String.join("; ", kept.reasons().stream().map(Reason::toString).toList());
    }
    return treated instanceof Treated.Translated translated
        ? "by %s; %d leaves left over".formatted(translated.rules(), translated.leftover().size())
        : "";
  }

  private void add(Treated treated) {
    count(outcomes, treated.word());
    if (treated instanceof Treated.Translated translated) {
      translated.rules().forEach(rule -> count(rules, rule));
    } else if (treated instanceof Treated.Kept kept) {
      count(reasons, kept.reasons().get(0).why().word());
    }
  }

  private static void count(Map<String, Long> counts, String key) {
    if (!key.isEmpty()) {
      counts.merge(key, 1L, Long::sum);
    }
  }

  private static void line(StringBuilder text, String name, long count) {
    text.append("%-34s %10d%n".formatted(name, count));
  }
}
