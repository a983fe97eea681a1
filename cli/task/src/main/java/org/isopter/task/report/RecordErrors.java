package org.isopter.task.report;

import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.stream.Collectors;
import org.isopter.model.check.Consistency;
import org.isopter.model.check.Severity;
import org.isopter.model.check.Violation;
import org.isopter.model.exam.Exam;
import org.isopter.model.value.Fault;
import org.isopter.task.io.Messages;

/**
 * Finds errors by the consistency rules in records that are to be used for something, so that
 * nobody passes on what contradicts itself without knowing.
 */
public final class RecordErrors {

  /** Beyond these, records with errors are only counted. */
  private static final int MOST_RECORDS = 20;

  private final RunLog log;
  private final boolean strict;
  private boolean quotes = true;
  private final Map<String, Integer> rules = new TreeMap<>();
  private int records;

  /**
   * Makes a search.
   *
   * @param strict whether a record with errors is refused
   */
  public RecordErrors(RunLog log, boolean strict) {
    this.log = log;
    this.strict = strict;
  }

  /** Returns this search, naming rules and showing nothing that a record holds. */
  public RecordErrors withoutValues() {
    quotes = false;
    return this;
  }

  /**
   * Says whether a record may be used. Its errors are in the log and the report either way; a
   * record that may not be used is refused there.
   */
  public boolean admits(Position document, Exam exam) {
    List<Violation> errors =
        Consistency.check(exam).stream()
            .filter(violation -> violation.rule().severity() == Severity.ERROR)
            .toList();
    if (!errors.isEmpty()) {
      name(document, errors);
    }
    return errors.isEmpty() || !strict;
  }

  /** Names the errors of a record, at least one; where that is strict, the record is refused. */
  public void name(Position document, List<Violation> errors) {
    records++;
    errors.forEach(error -> rules.merge(error.rule().id(), 1, Integer::sum));
    List<Issue> issues = errors.stream().map(error -> issue(document, error)).toList();
    if (strict) {
      log.refuse(document, issues);
    } else {
      say(document, errors);
      log.list(document, issues);
    }
  }

  private void say(Position document, List<Violation> errors) {
    if (records <= MOST_RECORDS) {
      String ids = errors.stream().map(one -> one.rule().id()).collect(Collectors.joining(", "));
      log.say(document + ": " + Messages.count(errors.size(), "error") + " by the rules: " + ids);
    }
  }

  private Issue issue(Position document, Violation error) {
    if (!quotes) {
      return Issue.of(Issue.Severity.ERROR, "business-rule", document, "").by(error.rule());
    }
    Fault fault = new Fault(error.path(), error.seen(), error.wanted(), error.suggestion());
    return Issue.of(document, fault).by(error.rule());
  }

  /** Says how many records have errors, and by which rules; nothing where none has. */
  public void sum() {
    if (records > 0) {
      String counts =
          rules.entrySet().stream()
              .map(rule -> rule.getKey() + " " + rule.getValue())
              .collect(Collectors.joining(", "));
      String advice = strict ? "" : "; 'isopter check' shows them, --strict refuses them";
      log.say(Messages.count(records, "record") + " with errors (" + counts + ")" + advice);
    }
  }
}
