package org.isopter.task.convert;

import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeSet;
import org.isopter.model.exam.Exam;
import org.isopter.model.exam.Identifier;
import org.isopter.task.input.Inputs;
import org.isopter.task.input.RecordDocuments;
import org.isopter.task.io.Messages;
import org.isopter.task.output.Target;
import org.isopter.task.report.RunLog;
import org.isopter.task.report.UsageException;

/**
 * The records as they were sent before, all held in memory. What one of them holds, and the record
 * that took its place does not, is still on the server that it was sent to.
 */
public final class FormerRecords {

  private final Map<Identifier, Exam> exams = new HashMap<>();
  private final Set<Identifier> unused = new HashSet<>();

  /** Returns no former records. */
  public static FormerRecords none() {
    return new FormerRecords();
  }

  /**
   * Reads the former records of files and folders; none where none is named.
   *
   * @throws UsageException when two have one identifier, or the target is one of the files
   */
  public static FormerRecords of(List<String> files, Target target, RunLog log) {
    if (files.isEmpty()) {
      return none();
    }
    Inputs inputs = Inputs.records(files.toArray(String[]::new));
    Inputs.refuseToOverwrite(inputs.find(log), "--output", target.name().orElse(null));
    return read(inputs, log);
  }

  /**
   * Reads former records; what is none is in the log, and refused.
   *
   * @throws UsageException when two have one identifier, since nobody knows which was sent last
   */
  public static FormerRecords read(Inputs inputs, RunLog log) {
    FormerRecords former = new FormerRecords();
    Set<String> twice = new TreeSet<>();
    new RecordDocuments(log)
        .each(
            inputs.find(log),
            (item, exam) -> {
              Identifier id = exam.header().id();
              if (former.exams.put(id, exam) != null) {
                twice.add(id.value());
              }
            });
    if (!twice.isEmpty()) {
      String which = String.join(", ", twice);
      throw new UsageException("--former has two records " + which + ": give the last of each");
    }
    former.unused.addAll(former.exams.keySet());
    return former;
  }

  /** Returns the earlier version of a record, or else the record that it amends. */
  public Optional<Exam> of(Exam exam) {
    Optional<Exam> found =
        Optional.ofNullable(exams.get(exam.header().id()))
            .or(() -> exam.header().amends().flatMap(old -> Optional.ofNullable(exams.get(old))));
    found.ifPresent(one -> unused.remove(one.header().id()));
    return found;
  }

  /** Says which of them nothing was taken back from, since no record took their place. */
  public void sum(RunLog log) {
    if (!unused.isEmpty()) {
      log.say(
          Messages.count(unused.size(), "former record")
              + " not touched: no record here has its identifier or amends it");
    }
  }
}
