package org.isopter.cli.command;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import org.isopter.cli.option.FhirInputs;
import org.isopter.cli.option.PolicyOptions;
import org.isopter.mapper.foreign.run.CarriedFile;
import org.isopter.mapper.foreign.run.NdjsonFiles;
import org.isopter.mapper.foreign.run.Policy;
import org.isopter.mapper.foreign.run.Together;
import org.isopter.task.convert.CarriedOutput;
import org.isopter.task.convert.FolderRecords;
import org.isopter.task.convert.ForeignConversion;
import org.isopter.task.convert.ForeignReporter;
import org.isopter.task.convert.ForeignTable;
import org.isopter.task.convert.RecordOutput;
import org.isopter.task.convert.ResumableRun;
import org.isopter.task.convert.StreamRecords;
import org.isopter.task.input.InputForm;
import org.isopter.task.input.InputForms;
import org.isopter.task.input.InputSource;
import org.isopter.task.input.RecordForm;
import org.isopter.task.io.Messages;
import org.isopter.task.io.Streams;
import org.isopter.task.output.FileOutput;
import org.isopter.task.output.Output;
import org.isopter.task.report.ExitStatus;
import org.isopter.task.report.Progress;
import org.isopter.task.report.RunLog;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;

/** Turns FHIR of any system into records. */
@Command(
    name = "from-fhir",
    description = {
      "Turns FHIR of any system into records.",
      "What to-fhir wrote comes back as it was. Of what others wrote, each resource is exact,"
          + " translated by named rules ('isopter catalogue --foreign'), or kept as it is; nothing is"
          + " guessed. What no rule takes goes into a file beside the records, OUTPUT.carried, which"
          + " to-fhir puts back."
    },
    footer = {
      "",
      "Examples:",
      "  isopter from-fhir target/bundles/01-harbour-pilot.json",
      "  isopter from-fhir target/bundles --output target/records/",
      "  isopter from-fhir docs/foreign/clinic.json --output target/clinic.yaml",
      "  isopter from-fhir 'docs/foreign/*.ndjson' --policy extract --report target/told.ndjson",
      "  isopter from-fhir docs/foreign/lines.ndjson --output target/lines.ndjson --resume"
    })
public final class FromFhirCommand extends InputCommand {

  @Option(
      names = {"-o", "--output"},
      paramLabel = "FILE|FOLDER",
      description = {
        "Where to write; standard output unless given.",
        "A FOLDER (it exists, or ends in /) gets a file for each examination."
      })
  @Nullable String output;

  @Option(
      names = "--format",
      paramLabel = "FORM",
      description = {
        "Form of the output: ${COMPLETION-CANDIDATES}.",
        "Unless given or told by the name of FILE, yaml for one examination of one input, else"
            + " ndjson; yaml in a folder."
      })
  @Nullable RecordForm format;

  @Option(
      names = "--carried",
      paramLabel = "FILE",
      description = "Where to keep what no rule takes; beside the records unless given.")
  @Nullable Path carried;

  @Option(
      names = "--table",
      paramLabel = "FILE",
      description =
          "Write what became of each resource, and all counts, to FILE; - is the terminal.")
  @Nullable String table;

  @Option(
      names = "--resume",
      description = {
        "Go on where a run was stopped that read one NDJSON file into another.",
        "Without it such a run starts again."
      })
  boolean resume;

  @Mixin final FhirInputs forms = new FhirInputs();
  @Mixin final PolicyOptions foreign = new PolicyOptions();

  private boolean lost;

  public FromFhirCommand(Streams streams) {
    super(streams);
  }

  @Override
  InputForms forms() {
    return forms;
  }

  /** A run that can be resumed cuts its report to where it goes on, and so must write it itself. */
  @Override
  boolean writesReport() {
    return isRun();
  }

  @Override
  public void run(RunLog journal) {
    check();
    List<InputSource> sources = sources(journal);
    keep(sources, "--output", output);
    keep(sources, "--table", table);
    keep(sources, "--carried", carried);
    try (ForeignTable rows = ForeignTable.of(table, streams.err());
        Progress progress = Progress.on(streams, isRun() ? "lines" : "resources")) {
      ForeignReporter told = new ForeignReporter(journal, foreign.policy, rows, progress);
      String where =
          isRun() ? run(told, progress, journal) : convert(sources, told, progress, journal);
      progress.end();
      rows.commit(told.counts());
      told.sum();
      written(journal, told, where);
    } catch (StreamRecords.TooManyException many) {
      throw misuse(String.valueOf(many.getMessage()));
    }
  }

  private void check() {
    if (resume && !isRun()) {
      throw misuse("--resume needs one NDJSON file as input and an NDJSON file as --output");
    }
    if (carried != null && foreign.policy != Policy.FAITHFUL) {
      throw misuse("--carried needs --policy faithful: any other carries nothing");
    }
    if (toFolder() && form().equals(Optional.of(InputForm.NDJSON))) {
      throw misuse("--format ndjson is one stream: give --output a file, not a folder");
    }
  }

  private String run(ForeignReporter told, Progress progress, RunLog journal) {
    Path target = Path.of(String.valueOf(output));
    Path beside = carried == null ? CarriedFile.beside(target) : carried;
    NdjsonFiles files = new NdjsonFiles(target, beside, Optional.ofNullable(report));
    boolean whole =
        new ResumableRun(foreign.reading(), told, progress, journal)
            .run(Path.of(inputs.get(0)), files, resume);
    if (whole && told.counts().isEmpty()) {
      journal.say(
          inputs.get(0) + (resume ? " holds no further line" : " is empty") + ": nothing to do");
    }
    String left = Files.exists(beside) ? "; what was left over is in " + beside : "";
    return whole ? " written as ndjson to " + target + left : "";
  }

  private String convert(
      List<InputSource> sources, ForeignReporter told, Progress progress, RunLog journal) {
    CarriedOutput side = side();
    try (RecordOutput out = output(sources, side, journal)) {
      new ForeignConversion(foreign.reading(), told, journal, out, progress).run(sources);
      lost = side.hasLost();
      return out.where();
    }
  }

  private RecordOutput output(List<InputSource> sources, CarriedOutput side, RunLog journal) {
    if (toFolder()) {
      return new FolderRecords(
          Path.of(String.valueOf(output)),
          form().orElse(InputForm.YAML),
          sources,
          carried == null ? Optional.empty() : Optional.of(side),
          journal);
    }
    boolean several = inputs.size() > 1 || sources.size() > 1;
    several |= sources.stream().anyMatch(InputSource::mayHoldSeveral);
    Optional<InputForm> wanted = form().or(() -> Optional.of(InputForm.NDJSON));
    Optional<Path> target = Optional.ofNullable(output).map(Path::of);
    boolean stream = wanted.equals(Optional.of(InputForm.NDJSON));
    Output to =
        target.<Output>map(file -> new FileOutput(file, stream)).orElse(Output.to(streams.out()));
    return new StreamRecords(target, several ? wanted : form(), to, side);
  }

  /** Returns where what no rule takes goes, unless each file of a folder has its own. */
  private CarriedOutput side() {
    if (carried != null) {
      return CarriedOutput.into(carried);
    }
    return output == null || toFolder()
        ? CarriedOutput.nowhere()
        : CarriedOutput.beside(Path.of(output));
  }

  /** Says what was done where the output itself does not show it. */
  private void written(RunLog journal, ForeignReporter told, String where) {
    if (lost) {
      journal.raise(ExitStatus.LEFT_OVER);
      journal.say(
          "what was left over is in no file: keep it with --output or --carried, or let it go"
              + " with --policy extract");
    }
    if (!where.isEmpty() && (output != null || journal.refused() > 0)) {
      String refused = journal.refused() == 0 ? "" : ", " + journal.refused() + " refused";
      journal.say(Messages.count(told.counts().exams(), "examination") + where + refused);
    }
  }

  /** Says whether it is a run over lines that can be stopped and resumed. */
  private boolean isRun() {
    if (output == null || toFolder() || inputs.size() != 1) {
      return false;
    }
    Path input = Path.of(inputs.get(0));
    Optional<InputForm> from = forms.stated().or(() -> InputForm.ofFileName(inputs.get(0)));
    Path target = Path.of(output);
    return from.equals(Optional.of(InputForm.NDJSON))
        && Files.isRegularFile(input)
        && form().orElse(InputForm.NDJSON) == InputForm.NDJSON
        && (!Files.exists(target) || Files.isRegularFile(target))
        && foreign.together != Together.ALL;
  }

  /** Returns the form that is asked for, by the option or by the name of the file. */
  private Optional<InputForm> form() {
    if (format != null) {
      return Optional.of(format.form());
    }
    return output == null || toFolder()
        ? Optional.empty()
        : InputForm.ofFileName(output).filter(RecordForm.ALL::contains);
  }

  private boolean toFolder() {
    return output != null && (output.endsWith("/") || Files.isDirectory(Path.of(output)));
  }
}
