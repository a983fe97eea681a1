package org.isopter.task.check;

import java.nio.file.Path;
import java.util.List;
import java.util.stream.Collectors;
import org.isopter.model.value.Result;
import org.isopter.task.input.InputDocuments;
import org.isopter.task.input.Inputs;
import org.isopter.task.report.RunLog;
import org.isopter.task.report.UsageException;
import org.jspecify.annotations.Nullable;

/**
 * Checks records against the record format and the consistency rules. The log gets every issue with
 * its place in the text; only errors refuse a record.
 */
public final class CheckTask {

  private final RunLog log;
  private final @Nullable Path suppress;

  /**
   * Makes a check.
   *
   * @param suppress a file of suppressions in YAML; null for none
   */
  public CheckTask(RunLog log, @Nullable Path suppress) {
    this.log = log;
    this.suppress = suppress;
  }

  /**
   * Checks every record.
   *
   * @throws UsageException when the file of suppressions cannot be read
   */
  public void run(Inputs inputs) {
    Suppressions suppressions = new Suppressions(suppressed());
    RecordCheck check = new RecordCheck(suppressions);
    new InputDocuments(log)
        .each(inputs.find(log), item -> log.judge(item.position(), check.issues(item)));
    log.sum("record");
    if (suppressions.hits() > 0) {
      log.say(suppressions.hits() + " suppressed");
    }
    suppressions
        .unused()
        .forEach(one -> log.say(suppress + ": " + one + " suppressed nothing; remove it"));
  }

  private List<KnownViolation> suppressed() {
    if (suppress == null) {
      return List.of();
    }
    Result<List<KnownViolation>> read = SuppressFile.read(suppress);
    if (read instanceof Result.Ok<List<KnownViolation>> ok) {
      return ok.value();
    }
    throw new UsageException(
        read.faults().stream()
            .map(fault -> suppress + ": " + fault)
            .collect(Collectors.joining("\n")));
  }
}
