package org.isopter.mapper.foreign.run;

import java.util.Collections;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import org.isopter.mapper.foreign.reading.ResourceOutcome;

/** How many resources became what, by which rules and for which reasons. */
public final class Counts {

  private long exams;
  private long unreadable;
  private long refused;
  private long leaves;
  private final Map<String, Long> outcomes = new TreeMap<>();
  private final Map<String, Long> rules = new TreeMap<>();
  private final Map<String, Long> reasons = new TreeMap<>();

  /** Counts what came of documents, and what a policy let pass. */
  public void add(Batch batch, Judged judged) {
    exams += judged.exams().size();
    refused += judged.refused().size();
    batch.reading().exams().forEach(exam -> count(rules, exam.rule()));
    batch.reading().resources().forEach(read -> add(read.outcome()));
  }

  /** Counts a document that could not be read. */
  public void addUnreadable() {
    unreadable++;
  }

  /** Returns how many resources were {@code exact}, {@code translated} or {@code kept}. */
  public long count(String word) {
    return outcomes.getOrDefault(word, 0L);
  }

  /** Returns how many resources there were. */
  public long resources() {
    return outcomes.values().stream().mapToLong(Long::longValue).sum();
  }

  /** Says whether there was nothing at all. */
  public boolean isEmpty() {
    return outcomes.isEmpty() && unreadable == 0;
  }

  /** Returns how many examinations passed. */
  public long exams() {
    return exams;
  }

  /** Returns how many documents or lines could not be read. */
  public long unreadable() {
    return unreadable;
  }

  /** Returns how many documents the policy refused. */
  public long refused() {
    return refused;
  }

  /** Returns how many values of translated resources were left over. */
  public long leaves() {
    return leaves;
  }

  /** Returns how many resources were kept for each reason, in the order of the words. */
  public Map<String, Long> reasons() {
    return Collections.unmodifiableMap(reasons);
  }

  /** Returns all counts as lines of text: outcomes, then rules, then reasons. */
  public String text() {
    StringBuilder text = new StringBuilder();
    line(text, "examinations", exams);
    for (String word : List.of("exact", "translated", "kept")) {
      line(text, word, count(word));
    }
    line(text, "values left over", leaves);
    line(text, "unreadable", unreadable);
    line(text, "refused", refused);
    rules.forEach((rule, n) -> line(text, "  rule " + rule, n));
    reasons.forEach((why, n) -> line(text, "  kept " + why, n));
    return text.toString();
  }

  private void add(ResourceOutcome outcome) {
    count(outcomes, outcome.word());
    if (outcome instanceof ResourceOutcome.Translated translated) {
      leaves += translated.leftover().size();
      translated.rules().forEach(rule -> count(rules, rule));
    } else if (outcome instanceof ResourceOutcome.Kept kept) {
      count(reasons, kept.reasons().get(0).why().word());
    }
  }

  private static void count(Map<String, Long> counts, String key) {
    if (!key.isEmpty()) {
      counts.merge(key, 1L, Long::sum);
    }
  }

  private static void line(StringBuilder text, String name, long count) {
    text.append("%-34s %10d\n".formatted(name, count));
  }
}
