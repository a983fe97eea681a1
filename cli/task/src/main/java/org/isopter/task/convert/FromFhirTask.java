package org.isopter.task.convert;

import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import org.isopter.mapper.foreign.run.Policy;
import org.isopter.task.input.InputForm;
import org.isopter.task.input.InputSource;
import org.isopter.task.input.Inputs;
import org.isopter.task.io.Messages;
import org.isopter.task.output.FileOutput;
import org.isopter.task.output.Output;
import org.isopter.task.output.Target;
import org.isopter.task.report.ExitStatus;
import org.isopter.task.report.Progress;
import org.isopter.task.report.RunLog;
import org.isopter.task.report.UsageException;

/**
 * Turns FHIR of any system into records. What no rule takes is kept beside the records where the
 * policy says so; the log says what became of each resource.
 */
public final class FromFhirTask {

  private final RunLog log;
  private final FromFhirRequest request;
  private final Target target;
  private boolean lost;

  public FromFhirTask(RunLog log, FromFhirRequest request) {
    this.log = log;
    this.request = request;
    this.target = request.target();
  }

  /**
   * Reads every input; what is no FHIR is in the log, and refused.
   *
   * @throws UsageException when the target cannot hold what is asked for, or is an input
   */
  public void run(Inputs inputs) {
    boolean lines = request.isLines(inputs);
    check(lines);
    List<InputSource> sources = sources(inputs);
    try (ForeignTable table = ForeignTable.of(request.table(), log.streams().err());
        Progress progress = Progress.on(log.streams(), lines ? "lines" : "resources")) {
      ForeignReporter reporter =
          new ForeignReporter(log, request.reading().policy(), table, progress);
      String where =
          lines
              ? new ResumableRun(request, reporter, progress, log).run(inputs.names().get(0))
              : convert(inputs, sources, reporter, progress);
      progress.end();
      table.commit(reporter.counts());
      reporter.sum();
      sum(reporter, where);
    } catch (StreamRecords.TooManyException many) {
      throw new UsageException(String.valueOf(many.getMessage()));
    }
  }

  private void check(boolean lines) {
    if (request.resume() && !lines) {
      throw new UsageException(
          "--resume needs one NDJSON file as input and an NDJSON file as --output");
    }
    if (request.carried().isPresent() && request.reading().policy() != Policy.FAITHFUL) {
      throw new UsageException("--carried needs --policy faithful: any other carries nothing");
    }
    if (target.isFolder() && request.wanted().equals(Optional.of(InputForm.NDJSON))) {
      throw new UsageException("--format ndjson is one stream: give --output a file, not a folder");
    }
  }

  private List<InputSource> sources(Inputs inputs) {
    List<InputSource> sources = inputs.accepting(InputForm.MESSAGE).find(log);
    Inputs.refuseToOverwrite(sources, "--output", target.name().orElse(null));
    Inputs.refuseToOverwrite(sources, "--table", request.table().orElse(null));
    Inputs.refuseToOverwrite(sources, "--carried", request.carried().orElse(null));
    return sources;
  }

  private String convert(
      Inputs inputs, List<InputSource> sources, ForeignReporter reporter, Progress progress) {
    CarriedOutput carried = carried();
    try (RecordOutput out = output(inputs, sources, carried)) {
      new ForeignConversion(request.reading(), reporter, log, out, progress).run(sources);
      lost = carried.hasLost();
      return out.where();
    }
  }

  private RecordOutput output(Inputs inputs, List<InputSource> sources, CarriedOutput carried) {
    if (target.isFolder()) {
      return new FolderRecords(
          target.path().orElseThrow(),
          request.wanted().orElse(InputForm.YAML),
          sources,
          request.carried().isPresent() ? Optional.of(carried) : Optional.empty(),
          log);
    }
    boolean several = inputs.names().size() > 1 || sources.size() > 1;
    several |= sources.stream().anyMatch(InputSource::mayHoldSeveral);
    Optional<InputForm> form = request.wanted().or(() -> Optional.of(InputForm.NDJSON));
    boolean stream = form.equals(Optional.of(InputForm.NDJSON));
    Optional<Path> file = target.path();
    Output to =
        file.<Output>map(path -> new FileOutput(path, stream)).orElse(Output.to(log.data()));
    return new StreamRecords(file, several ? form : request.wanted(), to, carried);
  }

  /** Returns where what no rule takes goes, unless each file of a folder has its own. */
  private CarriedOutput carried() {
    if (request.carried().isPresent()) {
      return CarriedOutput.into(request.carried().get());
    }
    return target.path().isEmpty() || target.isFolder()
        ? CarriedOutput.nowhere()
        : CarriedOutput.beside(target.path().get());
  }

  /** Says what was done where the output itself does not show it. */
  private void sum(ForeignReporter reporter, String where) {
    if (lost) {
      log.raise(ExitStatus.LEFT_OVER);
      log.say(
          "what was left over is in no file: keep it with --output or --carried, or let it go"
              + " with --policy extract");
    }
    if (!where.isEmpty() && (target.name().isPresent() || log.refused() > 0)) {
      String refused = log.refused() == 0 ? "" : ", " + log.refused() + " refused";
      log.say(Messages.count(reporter.counts().exams(), "examination") + where + refused);
    }
  }
}
