package org.isopter.cli;

import java.util.List;
import java.util.function.Supplier;
import org.isopter.model.value.Fault;

/** What is told of a run, and the exit status that follows from it. */
final class Journal {

  private final Streams streams;
  private final IssueSink told;
  private final IssueSink report;
  private final boolean debug;
  private int status = ExitStatus.OK;
  private int done;
  private int refused;
  private int faults;

  /**
   * Makes a journal.
   *
   * @param told where issues of documents are told of
   * @param report where all issues are told of once more
   * @param debug whether to show where a mistake in the program happened
   */
  Journal(Streams streams, IssueSink told, IssueSink report, boolean debug) {
    this.streams = streams;
    this.told = told;
    this.report = report;
    this.debug = debug;
  }

  /** Notes that a document is as it should be, and why it need not be perfect. */
  void accept(Position document, List<Issue> remarks) {
    done++;
    tell(document, remarks);
  }

  /** Notes that a document was refused, and why. */
  void refuse(Position document, List<Issue> issues) {
    refused++;
    faults += (int) issues.stream().filter(Issue::isError).count();
    raise(ExitStatus.REFUSED);
    tell(document, issues);
  }

  /** Notes that a document cannot be read, and why; the report is written by the caller. */
  void refuseUnreported(Position document, List<Issue> issues) {
    refused++;
    raise(ExitStatus.REFUSED);
    told.put(document, issues);
  }

  /** Notes that a document was refused since something of it was left over. */
  void refuseLeftOver(Position document, List<Issue> issues) {
    refused++;
    raise(ExitStatus.LEFT_OVER);
    told.put(document, issues);
  }

  /** Tells something about a document that is no reason to refuse it, but not in the report. */
  void remark(Position document, List<Issue> issues) {
    told.put(document, issues);
  }

  /** Tells something that is no reason to refuse a document, also in the report. */
  void warn(Position document, List<Issue> issues) {
    tell(document, issues);
  }

  /** Puts OperationOutcomes into the report; they are made only where there is one. */
  void outcomes(Supplier<List<String>> lines) {
    if (report != IssueSink.NOBODY) {
      lines.get().forEach(report::outcome);
    }
  }

  /** Notes every fault for which a document was refused. */
  void refuseFor(Position document, List<Fault> faults) {
    refuse(document, faults.stream().map(fault -> Issue.of(document, fault)).toList());
  }

  /** Notes that the command line asks for something that is not there. */
  void missing(String name, String type, String text) {
    raise(ExitStatus.USAGE);
    trouble(new Position(name, 0, 0), Issue.Severity.ERROR, type, text);
  }

  /** Notes that reading a source failed. */
  void unreadable(String name, Exception reason) {
    raise(ExitStatus.INTERNAL);
    String text = "could not be read (" + Words.of(reason) + ")";
    trouble(new Position(name, 0, 0), Issue.Severity.FATAL, "exception", text);
  }

  /** Notes that a run over a source could not be finished. */
  void unfinished(String name, Exception reason) {
    raise(ExitStatus.INTERNAL);
    String text = "could not be finished (" + Words.of(reason) + ")";
    trouble(new Position(name, 0, 0), Issue.Severity.FATAL, "exception", text);
  }

  /** Notes a mistake in the program; its message may hold patient data and is not shown. */
  void broken(Position document, RuntimeException mistake) {
    raise(ExitStatus.INTERNAL);
    trouble(document, Issue.Severity.FATAL, "exception", Words.internal(mistake));
    if (debug) {
      mistake.printStackTrace(streams.err());
    }
  }

  /** Says something that is neither data nor a fault. */
  void say(String words) {
    streams.err().println("isopter: " + words);
  }

  /** Says how many documents of a kind were as they should be and how many were not. */
  void sum(String noun) {
    String all = Words.count(done + refused, noun);
    String bad = refused + " refused for " + Words.count(faults, "fault");
    say(all + ": " + (refused == 0 ? "no fault found" : bad));
  }

  /** Returns how many documents were done. */
  int done() {
    return done;
  }

  /** Returns how many documents were refused. */
  int refused() {
    return refused;
  }

  int status() {
    return status;
  }

  void raise(int to) {
    status = ExitStatus.worse(status, to);
  }

  /** Trouble around a document is no data of a command that tells of documents. */
  private void trouble(Position at, Issue.Severity severity, String type, String text) {
    say(at + ": " + text);
    report.put(at, List.of(Issue.of(severity, type, at, text)));
  }

  private void tell(Position document, List<Issue> issues) {
    told.put(document, issues);
    report.put(document, issues);
  }
}
