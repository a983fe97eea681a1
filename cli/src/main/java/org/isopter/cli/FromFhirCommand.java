package org.isopter.cli;

import java.util.Optional;
import java.util.function.Function;
import org.isopter.mapper.fhir.BundleKind;
import org.isopter.model.value.Result;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;

/** Turns FHIR into records. */
@Command(
    name = "from-fhir",
    description = {
      "Turns FHIR R4 bundles into records.",
      "A bundle that holds anything else than what to-fhir writes is refused, with its place."
    },
    footer = {
      "",
      "Examples:",
      "  isopter from-fhir target/bundles/01-harbour-pilot.json",
      "  isopter from-fhir target/bundles --output target/records/",
      "  isopter from-fhir target/all.ndjson --output target/records.ndjson"
    })
final class FromFhirCommand extends ConvertCommand {

  @Option(
      names = "--format",
      paramLabel = "FORM",
      description = {
        "Form of the output: ${COMPLETION-CANDIDATES}.",
        "Unless given, yaml for one bundle and ndjson for several."
      })
  @Nullable RecordForm format;

  @Mixin final FhirInputs forms = new FhirInputs();

  FromFhirCommand(Streams streams) {
    super(streams);
  }

  @Override
  InputForms forms() {
    return forms;
  }

  @Override
  Optional<Form> wanted() {
    return Optional.ofNullable(format).map(RecordForm::form);
  }

  @Override
  Form usual() {
    return Form.YAML;
  }

  @Override
  Function<Item, Result<String>> step(Form form) {
    Records records = new Records();
    Bundles bundles = new Bundles(BundleKind.COLLECTION);
    RecordForm record = RecordForm.valueOf(form.name());
    return item -> bundles.read(item).map(exam -> records.write(exam, record));
  }
}
