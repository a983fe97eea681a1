package org.isopter.cli;

import java.util.List;
import org.isopter.model.value.Fault;

/** What is told of a run, and the exit status that follows from it. */
final class Journal {

  private final Streams streams;
  private final List<IssueSink> sinks;
  private final boolean debug;
  private int status = ExitStatus.OK;
  private int done;
  private int refused;

  Journal(Streams streams, List<IssueSink> sinks, boolean debug) {
    this.streams = streams;
    this.sinks = List.copyOf(sinks);
    this.debug = debug;
  }

  /** Notes that a document is as it should be, and why it need not be perfect. */
  void accept(Item item, List<Issue> remarks) {
    done++;
    tell(item.position(), remarks);
  }

  /** Notes that a document was refused, and why. */
  void refuse(Item item, List<Issue> issues) {
    refused++;
    raise(ExitStatus.REFUSED);
    tell(item.position(), issues);
  }

  /** Notes every fault for which a document was refused. */
  void refuseFor(Item item, List<Fault> faults) {
    refuse(item, faults.stream().map(fault -> Issue.of(item, fault)).toList());
  }

  /** Notes that the command line asks for something that is not there. */
  void missing(String name, String type, String text) {
    raise(ExitStatus.USAGE);
    Position at = new Position(name, 0, 0);
    tell(at, List.of(Issue.of(Issue.Severity.ERROR, type, at, text)));
  }

  /** Notes that reading a source failed. */
  void unreadable(String name, Exception reason) {
    raise(ExitStatus.INTERNAL);
    Position at = new Position(name, 0, 0);
    String text = "could not be read (" + Words.of(reason) + ")";
    tell(at, List.of(Issue.of(Issue.Severity.FATAL, "exception", at, text)));
  }

  /** Notes a mistake in the program; its message may hold patient data and is not shown. */
  void broken(Item item, RuntimeException mistake) {
    raise(ExitStatus.INTERNAL);
    Position at = item.position();
    tell(at, List.of(Issue.of(Issue.Severity.FATAL, "exception", at, Words.internal(mistake))));
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
    say(refused == 0 ? all + ", no fault found" : all + ", " + refused + " refused");
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

  private void tell(Position document, List<Issue> issues) {
    sinks.forEach(sink -> sink.put(document, issues));
  }
}
