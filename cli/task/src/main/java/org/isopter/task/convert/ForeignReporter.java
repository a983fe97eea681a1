package org.isopter.task.convert;

import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Set;
import java.util.stream.Collectors;
import org.isopter.mapper.foreign.ledger.Reason;
import org.isopter.mapper.foreign.reading.ReadResource;
import org.isopter.mapper.foreign.reading.Reading;
import org.isopter.mapper.foreign.run.Batch;
import org.isopter.mapper.foreign.run.Counts;
import org.isopter.mapper.foreign.run.Judged;
import org.isopter.mapper.foreign.run.Origin;
import org.isopter.mapper.foreign.run.Policy;
import org.isopter.mapper.foreign.run.Receiver;
import org.isopter.mapper.foreign.run.Report;
import org.isopter.model.value.Fault;
import org.isopter.task.io.Messages;
import org.isopter.task.report.Issue;
import org.isopter.task.report.Position;
import org.isopter.task.report.Progress;
import org.isopter.task.report.RunLog;

/** Tells what became of what was read, and counts it. */
public final class ForeignReporter implements Receiver {

  /** Beyond these, remarks are only counted: the report and the table hold all. */
  private static final int MOST_REMARKS = 20;

  private final RunLog log;
  private final Policy policy;
  private final ForeignTable table;
  private final Progress progress;
  private final Counts counts = new Counts();
  private long remarks;
  private long deleted;

  public ForeignReporter(RunLog log, Policy policy, ForeignTable table, Progress progress) {
    this.log = log;
    this.policy = policy;
    this.table = table;
    this.progress = progress;
  }

  static Position position(Origin origin) {
    return new Position(origin.name(), (int) origin.line(), 0);
  }

  /** Returns what was counted so far. */
  public Counts counts() {
    return counts;
  }

  @Override
  public void refused(Origin origin, List<Fault> faults) {
    progress.clear();
    counts.addUnreadable();
    Position at = position(origin);
    log.refuseUnreported(at, faults.stream().map(fault -> Issue.of(at, fault)).toList());
  }

  @Override
  public void failed(Origin origin, RuntimeException mistake) {
    progress.clear();
    log.broken(position(origin), mistake);
  }

  @Override
  public void deleted(Origin origin, String name) {
    deleted++;
  }

  @Override
  public void read(Batch batch) {
    Judged judged = policy.judge(batch);
    counts.add(batch, judged);
    batch.reading().strangers().forEach(each -> remark(batch.of(each), stranger(batch, each)));
    if (policy == Policy.STRICT) {
      new LinkedHashSet<>(judged.refused()).forEach(origin -> refuse(batch, origin));
    } else {
      batch.reading().resources().forEach(read -> remark(batch.of(read), reasons(batch, read)));
    }
    table.put(batch);
  }

  /** Says in one line what became of all resources. */
  public void sum() {
    if (remarks > MOST_REMARKS && policy != Policy.STRICT) {
      String more = Messages.count(remarks - MOST_REMARKS, "more remark");
      log.say(more + ": --report or --table holds all of them");
    }
    if (deleted > 0) {
      log.say(Messages.count(deleted, "resource") + " left out: the export says it was deleted");
    }
    if (counts.resources() == 0) {
      return;
    }
    String left =
        counts.leaves() == 0 ? "" : " with %,d values left over".formatted(counts.leaves());
    String why = counts.reasons().isEmpty() ? "" : " (" + whys() + ")";
    log.say(
        "%s: %d exact, %d translated%s, %d kept%s"
            .formatted(
                Messages.count(counts.resources(), "resource"),
                counts.count("exact"),
                counts.count("translated"),
                left,
                counts.count("kept"),
                why));
  }

  private String whys() {
    return counts.reasons().entrySet().stream()
        .map(each -> each.getValue() + " " + each.getKey())
        .collect(Collectors.joining(", "));
  }

  private void remark(Origin origin, List<Issue> issues) {
    if (issues.isEmpty()) {
      return;
    }
    remarks++;
    if (remarks <= MOST_REMARKS || policy == Policy.STRICT) {
      progress.clear();
      log.remark(position(origin), issues);
    }
  }

  private static List<Issue> stranger(Batch batch, Reading.Stranger stranger) {
    Position at = position(batch.of(stranger));
    List<Issue> issues = new ArrayList<>();
    stranger.faults().forEach(fault -> issues.add(Issue.of(at, fault).asWarning()));
    String text = "it is not as to-fhir writes it, and is read as the record of another system";
    issues.add(Issue.of(Issue.Severity.WARNING, "invalid", at, text));
    return issues;
  }

  /**
   * What holds no finding at all is counted, but nothing to remark upon. Of what was kept the first
   * reason is enough here: the report holds the others.
   */
  private static List<Issue> reasons(Batch batch, ReadResource read) {
    boolean kept = read.outcome().word().equals("kept");
    return Report.reasons(read).stream()
        .limit(kept ? 1 : Integer.MAX_VALUE)
        .filter(reason -> !reason.isExpected())
        .map(batch::withFiles)
        .map(reason -> reason(position(batch.of(read)), read, reason))
        .toList();
  }

  private static Issue reason(Position at, ReadResource read, Reason reason) {
    List<Issue.Said> said = new ArrayList<>();
    said.add(new Issue.Said(read.outcome().word().equals("kept") ? "kept" : "left", reason.word()));
    if (reason.quotes()) {
      said.add(new Issue.Said("saw", reason.fault().seen()));
    }
    said.add(new Issue.Said("wanted", reason.fault().wanted()));
    String path =
        read.name() + (reason.fault().path().isEmpty() ? "" : "#" + reason.fault().path());
    return new Issue(Issue.Severity.WARNING, "not-supported", at, path, said);
  }

  private void refuse(Batch batch, Origin origin) {
    progress.clear();
    Position at = position(origin);
    Set<String> lines = new LinkedHashSet<>();
    for (ReadResource read : batch.reading().resources()) {
      if (batch.of(read).equals(origin) && !Report.leftOver(read).isEmpty()) {
        lines.add(read.name() + ": " + Report.leftOver(read));
      }
    }
    String text = "refused, since something is left over:\n" + String.join("\n", lines);
    log.refuseLeftOver(at, List.of(Issue.of(Issue.Severity.ERROR, "not-supported", at, text)));
  }
}
