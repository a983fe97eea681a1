package org.isopter.task.report;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.isopter.model.check.ConsistencyRule;
import org.isopter.model.value.Fault;

/**
 * Something to tell about an input.
 *
 * @param severity how bad it is
 * @param type the kind of issue, a code of FHIR's issue-type
 * @param at the file, with line and column where they are known
 * @param path the path within the document; empty for the whole
 * @param said each thing there is to say, with a word for it
 * @param rule the consistency rule that tells it, where it is one
 */
public record Issue(
    Severity severity,
    String type,
    Position at,
    String path,
    List<Said> said,
    Optional<ConsistencyRule> rule) {

  public Issue(Severity severity, String type, Position at, String path, List<Said> said) {
    this(severity, type, at, path, said, Optional.empty());
  }

  /** How bad an issue is; the words are those of FHIR's issue-severity. */
  public enum Severity {
    FATAL,
    ERROR,
    WARNING,
    INFORMATION
  }

  /**
   * One thing to say.
   *
   * @param word what it is: saw, wanted, hint; empty for plain text
   * @param text the thing itself
   */
  public record Said(String word, String text) {}

  private static final Pattern PLACE =
      Pattern.compile("line (\\d+), column (\\d+)(?:: (.*))?", Pattern.DOTALL);

  /** Returns a fault of a document as an issue; it is an error. */
  public static Issue of(Position document, Fault fault) {
    List<Said> said = new ArrayList<>();
    said.add(new Said("saw", fault.seen()));
    said.add(new Said("wanted", fault.wanted()));
    if (!fault.advice().isEmpty()) {
      said.add(new Said("hint", fault.advice()));
    }
    Matcher place = PLACE.matcher(fault.path());
    return place.matches()
        ? new Issue(Severity.ERROR, "invalid", at(document, place), path(place), said)
        : new Issue(Severity.ERROR, "invalid", document, fault.path(), said);
  }

  /** Returns this issue as one that is no error. */
  public Issue asWarning() {
    return new Issue(Severity.WARNING, type, at, path, said, rule);
  }

  /** Returns this issue as found by a consistency rule, which is named before all else. */
  public Issue by(ConsistencyRule which) {
    List<Said> all = new ArrayList<>();
    all.add(new Said("rule", which.id() + ": " + which.what()));
    all.addAll(said);
    Severity own = Severity.valueOf(which.severity().name());
    String code = own == Severity.INFORMATION ? "informational" : "business-rule";
    return new Issue(own, code, at, path, all, Optional.of(which));
  }

  /** Returns plain words about a file or a document. */
  public static Issue of(Severity severity, String type, Position at, String text) {
    return new Issue(severity, type, at, "", List.of(new Said("", text)));
  }

  /** Says whether it refuses the document. */
  public boolean isError() {
    return severity == Severity.FATAL || severity == Severity.ERROR;
  }

  /** A document on a line of its own has one line: its line in the file is the one that counts. */
  private static Position at(Position document, Matcher place) {
    int line = document.line() > 0 ? document.line() : Integer.parseInt(place.group(1));
    return new Position(document.file(), line, Integer.parseInt(place.group(2)));
  }

  private static String path(Matcher place) {
    return place.group(3) == null ? "" : place.group(3);
  }
}
