package org.isopter.task.pool;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import org.isopter.mapper.pool.Remainder;
import org.isopter.task.input.InputSource;
import org.isopter.task.report.Issue;
import org.isopter.task.report.Position;
import org.isopter.task.report.RunLog;

/**
 * Lists in the report of a run what was refused or left over, by cause and without identities: an
 * input is named by its number, in the order in which inputs are read, and nothing that it holds is
 * shown.
 */
final class LeftOverReport {

  private final RunLog log;
  private final Map<String, Integer> numbers = new HashMap<>();

  /**
   * Makes a report.
   *
   * @param sources the inputs in the order in which they are read
   */
  LeftOverReport(RunLog log, List<InputSource> sources) {
    this.log = log;
    for (InputSource source : sources) {
      numbers.putIfAbsent(source.name(), numbers.size() + 1);
    }
  }

  /** Lists one thing that was left over. */
  void list(Remainder left) {
    Position at = position(left.source(), left.line());
    List<Issue.Said> said = new ArrayList<>();
    said.add(new Issue.Said("", what(left)));
    left.reasons().forEach(reason -> said.add(new Issue.Said("cause", reason)));
    boolean refused = left.what() == Remainder.What.REFUSED;
    Issue.Severity severity = refused ? Issue.Severity.ERROR : Issue.Severity.WARNING;
    log.list(at, List.of(new Issue(severity, "not-supported", at, "", said)));
  }

  /** Returns what an input is called where nobody is named. */
  Position position(String source, long line) {
    return new Position("input " + numbers.getOrDefault(source, 0), Math.toIntExact(line), 0);
  }

  private static String what(Remainder left) {
    return switch (left.what()) {
      case REFUSED -> "a document was refused";
      case KEPT -> left.shownType() + " was not pooled";
      case PART -> "part of " + left.shownType() + " was not pooled";
    };
  }
}
