package org.isopter.task.report;

import java.io.PrintStream;
import java.util.List;
import java.util.function.Supplier;
import org.isopter.mapper.io.FailureText;
import org.isopter.model.value.Fault;
import org.isopter.task.io.Messages;
import org.isopter.task.io.Streams;

/** Collects what there is to say of a run, and the exit status that follows from it. */
public final class RunLog {

  private final Streams streams;
  private final IssueSink sink;
  private final IssueSink report;
  private final boolean debug;
  private int status = ExitStatus.OK;
  private int done;
  private int refused;
  private int faults;
  private int remarked;

  /**
   * Makes a log.
   *
   * @param sink where issues of documents are reported
   * @param report where all issues are reported once more
   * @param debug whether to show where a mistake in the program happened
   */
  public RunLog(Streams streams, IssueSink sink, IssueSink report, boolean debug) {
    this.streams = streams;
    this.sink = sink;
    this.report = report;
    this.debug = debug;
  }

  /** Makes a log whose words, also those about documents, go to the stream for words. */
  public static RunLog on(Streams streams) {
    return new RunLog(streams, new IssueText(streams.err()), IssueSink.NOBODY, false);
  }

  /** Returns where data go; words go through this log. */
  public PrintStream data() {
    return streams.out();
  }

  /** Returns the streams of the run. */
  public Streams streams() {
    return streams;
  }

  /** Notes that a document is as it should be. */
  public void accept(Position document) {
    accept(document, List.of());
  }

  /** Notes that a document is as it should be, and why it need not be perfect. */
  public void accept(Position document, List<Issue> remarks) {
    done++;
    remarked += remarks.size();
    tell(document, remarks);
  }

  /** Notes that a document was refused, and why. */
  public void refuse(Position document, List<Issue> issues) {
    refused++;
    faults += (int) issues.stream().filter(Issue::isError).count();
    raise(ExitStatus.REFUSED);
    tell(document, issues);
  }

  /** Refuses a document where one of its issues is an error, and accepts it otherwise. */
  public void judge(Position document, List<Issue> issues) {
    if (issues.stream().anyMatch(Issue::isError)) {
      refuse(document, issues);
    } else {
      accept(document, issues);
    }
  }

  /** Notes that a document cannot be read, and why; the report is written by the caller. */
  public void refuseUnreported(Position document, List<Issue> issues) {
    refused++;
    raise(ExitStatus.REFUSED);
    sink.put(document, issues);
  }

  /** Notes that a document was refused since something of it was left over. */
  public void refuseLeftOver(Position document, List<Issue> issues) {
    refused++;
    raise(ExitStatus.LEFT_OVER);
    sink.put(document, issues);
  }

  /** Tells something about a document that is no reason to refuse it, but not in the report. */
  public void remark(Position document, List<Issue> issues) {
    sink.put(document, issues);
  }

  /** Tells something that is no reason to refuse a document, also in the report. */
  public void warn(Position document, List<Issue> issues) {
    tell(document, issues);
  }

  /** Puts issues of a document into the report alone. */
  public void list(Position document, List<Issue> issues) {
    report.put(document, issues);
  }

  /** Puts OperationOutcomes into the report; they are made only where there is one. */
  public void outcomes(Supplier<List<String>> lines) {
    if (report != IssueSink.NOBODY) {
      lines.get().forEach(report::outcome);
    }
  }

  /** Notes every fault for which a document was refused. */
  public void refuseFor(Position document, List<Fault> faults) {
    refuse(document, faults.stream().map(fault -> Issue.of(document, fault)).toList());
  }

  /** Notes that the command line asks for something that is not there. */
  public void missing(String name, String type, String text) {
    raise(ExitStatus.USAGE);
    trouble(new Position(name, 0, 0), Issue.Severity.ERROR, type, text);
  }

  /** Notes that reading a source failed. */
  public void unreadable(String name, Exception reason) {
    raise(ExitStatus.INTERNAL);
    String text = "could not be read (" + FailureText.of(reason) + ")";
    trouble(new Position(name, 0, 0), Issue.Severity.FATAL, "exception", text);
  }

  /** Notes that a run over a source could not be finished. */
  public void unfinished(String name, Exception reason) {
    raise(ExitStatus.INTERNAL);
    String text = "could not be finished (" + FailureText.of(reason) + ")";
    trouble(new Position(name, 0, 0), Issue.Severity.FATAL, "exception", text);
  }

  /** Notes a mistake in the program; its message may hold patient data and is not shown. */
  public void broken(Position document, RuntimeException mistake) {
    raise(ExitStatus.INTERNAL);
    trouble(document, Issue.Severity.FATAL, "exception", Messages.internal(mistake));
    if (debug) {
      mistake.printStackTrace(streams.err());
    }
  }

  /** Says something that is neither data nor a fault. */
  public void say(String words) {
    streams.err().println("isopter: " + Messages.visible(words));
  }

  /** Says how many documents of a kind were as they should be and how many were not. */
  public void sum(String noun) {
    String all = Messages.count(done + refused, noun);
    String bad = refused + " refused for " + Messages.count(faults, "fault");
    String good = done == 0 ? "none was read" : remarked == 0 ? "no fault found" : "none refused";
    String more = remarked == 0 ? "" : ", " + Messages.count(remarked, "remark");
    say(all + ": " + (refused == 0 ? good : bad) + more);
  }

  /** Returns how many documents were done. */
  public int done() {
    return done;
  }

  /** Returns how many documents were refused. */
  public int refused() {
    return refused;
  }

  /** Returns the exit status so far. */
  public int status() {
    return status;
  }

  /** Raises the exit status, which never falls. */
  public void raise(int to) {
    status = ExitStatus.worse(status, to);
  }

  /** Trouble around a document is no data of a command that tells of documents. */
  private void trouble(Position at, Issue.Severity severity, String type, String text) {
    say(at + ": " + text);
    report.put(at, List.of(Issue.of(severity, type, at, text)));
  }

  private void tell(Position document, List<Issue> issues) {
    sink.put(document, issues);
    report.put(document, issues);
  }
}
