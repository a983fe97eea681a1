package org.isopter.cli;

import java.util.EnumSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import org.isopter.model.value.Fault;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Option;

/** Checks records. */
@Command(
    name = "check",
    description = {
      "Checks records and tells every fault: where it stands, what was seen and what is wanted.",
      "It says whether a record can be read, not whether an eye is healthy."
    },
    footer = {
      "",
      "Examples:",
      "  isopter check docs/demo/01-harbour-pilot.yaml",
      "  isopter check docs/demo --format json",
      "  isopter check docs/demo --report target/faults.ndjson"
    })
final class CheckCommand extends InputCommand {

  @Option(
      names = "--format",
      paramLabel = "FORM",
      defaultValue = "text",
      description = {
        "How to tell: ${COMPLETION-CANDIDATES} (default: ${DEFAULT-VALUE}).",
        "json is a FHIR OperationOutcome a line, one for each record."
      })
  WordForm format = WordForm.TEXT;

  @Option(
      names = "--input-format",
      paramLabel = "FORM",
      description = "Form of the inputs, for names that do not tell it: ${COMPLETION-CANDIDATES}.")
  @Nullable RecordForm inputFormat;

  CheckCommand(Streams streams) {
    super(streams);
  }

  @Override
  Optional<Form> stated() {
    return Optional.ofNullable(inputFormat).map(RecordForm::form);
  }

  @Override
  Set<Form> accepted() {
    return EnumSet.of(Form.YAML, Form.JSON, Form.NDJSON);
  }

  @Override
  IssueSink told() {
    return format.on(streams.out());
  }

  @Override
  void run(Journal journal) {
    RecordCheck check = new RecordCheck();
    new Items(journal)
        .each(
            sources(journal),
            item -> {
              List<Fault> faults = check.faults(item);
              if (faults.isEmpty()) {
                journal.accept(item, List.of());
              } else {
                journal.refuseFor(item, faults);
              }
            });
    journal.sum("record");
  }
}
