package org.isopter.task.exchange;

import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import org.isopter.mapper.message.MessageWriter;
import org.isopter.mapper.message.ResultMessage;
import org.isopter.model.exam.Exam;
import org.isopter.model.exam.Status;
import org.isopter.model.value.Result;
import org.isopter.task.convert.FormerRecords;
import org.isopter.task.input.InputDocument;
import org.isopter.task.input.InputForm;
import org.isopter.task.input.InputSource;
import org.isopter.task.input.Inputs;
import org.isopter.task.input.RecordDocuments;
import org.isopter.task.io.Messages;
import org.isopter.task.output.FileOutput;
import org.isopter.task.output.FolderOutput;
import org.isopter.task.output.Output;
import org.isopter.task.output.Target;
import org.isopter.task.report.Issue;
import org.isopter.task.report.RecordErrors;
import org.isopter.task.report.RunLog;
import org.isopter.task.report.UsageException;

/** Turns records into messages with results (HL7 v2), and names what a message leaves out. */
public final class ToV2Task {

  private final RunLog log;
  private final Target target;
  private final RecordErrors errors;
  private final MessageWriter writer = new MessageWriter();
  private FormerRecords former = FormerRecords.none();
  private int facts;
  private int written;

  /**
   * Makes a task.
   *
   * @param target where messages go
   * @param strict whether records with errors by the consistency rules are refused
   */
  public ToV2Task(RunLog log, Target target, boolean strict) {
    this.log = log;
    this.target = target;
    this.errors = new RecordErrors(log, strict);
  }

  /** Returns this task taking back what former records said and the records here do not. */
  public ToV2Task after(FormerRecords records) {
    former = records;
    return this;
  }

  /**
   * Turns every record into a message; what is no record, or has no message, is refused in the log.
   *
   * @throws UsageException when several messages would go into one file, or a target is an input
   */
  public void run(Inputs inputs) {
    List<InputSource> sources = inputs.find(log);
    Inputs.refuseToOverwrite(sources, "--output", target.name().orElse(null));
    boolean several = sources.size() > 1 || sources.stream().anyMatch(InputSource::mayHoldSeveral);
    if (several && !target.isFolder()) {
      throw new UsageException("a file holds one message: give --output a folder");
    }
    try (Output output = output(sources)) {
      new RecordDocuments(log).each(sources, (item, exam) -> one(item, exam, output));
      output.commit();
    }
    errors.sum();
    former.sum(log);
    log.say(
        Messages.count(log.done(), "message")
            + " written with %d of %d facts".formatted(written, facts)
            + (log.refused() == 0 ? "" : ", " + log.refused() + " refused"));
  }

  private void one(InputDocument item, Exam exam, Output output) {
    if (!errors.admits(item.position(), exam)) {
      return;
    }
    Result<ResultMessage> message =
        former
            .of(exam)
            .map(old -> writer.writeAfter(exam, old))
            .orElseGet(() -> writer.write(exam));
    if (!(message instanceof Result.Ok<ResultMessage> ok)) {
      log.refuseFor(item.position(), message.faults());
      return;
    }
    Optional<Issue> obstacle = output.put(item, ok.value().text());
    if (obstacle.isPresent()) {
      log.refuse(item.position(), List.of(obstacle.get()));
      return;
    }
    facts += exam.header().status() == Status.ENTERED_IN_ERROR ? 0 : exam.facts().size();
    written += ok.value().facts();
    log.accept(
        item.position(),
        ok.value().left().stream()
            .map(fault -> Issue.of(item.position(), fault).asWarning())
            .toList());
  }

  private Output output(List<InputSource> sources) {
    Optional<Path> path = target.path();
    if (path.isEmpty()) {
      return Output.to(log.data());
    }
    return target.isFolder()
        ? new FolderOutput(path.get(), InputForm.MESSAGE, sources)
        : new FileOutput(path.get(), false);
  }
}
