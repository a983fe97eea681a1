package org.isopter.cli.command;

import java.nio.file.Path;
import java.util.List;
import java.util.stream.Collectors;
import org.isopter.cli.option.RecordInputs;
import org.isopter.model.value.Result;
import org.isopter.task.check.RecordCheck;
import org.isopter.task.check.SuppressFile;
import org.isopter.task.check.Suppression;
import org.isopter.task.check.Suppressions;
import org.isopter.task.input.InputDocument;
import org.isopter.task.input.InputDocuments;
import org.isopter.task.input.InputForms;
import org.isopter.task.io.Streams;
import org.isopter.task.report.CheckForm;
import org.isopter.task.report.Issue;
import org.isopter.task.report.IssueSink;
import org.isopter.task.report.RunLog;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;

/** Checks records. */
@Command(
    name = "check",
    description = {
      "Checks records and tells every fault: where it stands, what was seen and what is wanted.",
      "A record that can be read is held against the consistency rules (docs/rules.md); only their",
      "errors refuse it. That nothing is told says nothing about the health of an eye."
    },
    footer = {
      "",
      "Examples:",
      "  isopter check docs/demo/01-harbour-pilot.yaml",
      "  isopter check docs/demo --format json",
      "  isopter check docs/demo --report target/faults.ndjson",
      "  isopter check docs/demo --format sarif"
    })
public final class CheckCommand extends InputCommand {

  @Option(
      names = "--format",
      paramLabel = "FORM",
      defaultValue = "text",
      description = {
        "How to tell: ${COMPLETION-CANDIDATES} (default: ${DEFAULT-VALUE}).",
        "json is a FHIR OperationOutcome a line, one for each record; sarif is one log of all."
      })
  CheckForm format = CheckForm.TEXT;

  @Option(
      names = "--suppress",
      paramLabel = "FILE",
      description = {
        "Leave out what FILE knows to be right: a YAML list of { rule, reason }, each with file",
        "and path where it is to hold for less. What suppresses nothing is told."
      })
  @Nullable Path suppress;

  @Mixin final RecordInputs forms = new RecordInputs();

  public CheckCommand(Streams streams) {
    super(streams);
  }

  @Override
  InputForms forms() {
    return forms;
  }

  @Override
  IssueSink told() {
    return format.on(streams.out());
  }

  @Override
  public void run(RunLog journal) {
    Suppressions suppressions = new Suppressions(suppressed());
    RecordCheck check = new RecordCheck(suppressions);
    new InputDocuments(journal)
        .each(sources(journal), item -> note(journal, item, check.issues(item)));
    journal.sum("record");
    tell(journal, suppressions);
  }

  private void note(RunLog journal, InputDocument item, List<Issue> issues) {
    if (issues.stream().anyMatch(Issue::isError)) {
      journal.refuse(item.position(), issues);
    } else {
      journal.accept(item.position(), issues);
    }
  }

  private void tell(RunLog journal, Suppressions suppressions) {
    if (suppressions.hits() > 0) {
      journal.say(suppressions.hits() + " suppressed");
    }
    suppressions
        .unused()
        .forEach(one -> journal.say(suppress + ": " + one + " suppressed nothing; remove it"));
  }

  private List<Suppression> suppressed() {
    if (suppress == null) {
      return List.of();
    }
    Result<List<Suppression>> read = SuppressFile.read(suppress);
    if (read instanceof Result.Ok<List<Suppression>> ok) {
      return ok.value();
    }
    throw misuse(
        read.faults().stream()
            .map(fault -> suppress + ": " + fault)
            .collect(Collectors.joining("\n")));
  }
}
