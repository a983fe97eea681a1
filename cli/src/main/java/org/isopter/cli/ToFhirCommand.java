package org.isopter.cli;

import java.util.Optional;
import java.util.function.Function;
import org.isopter.mapper.fhir.BundleKind;
import org.isopter.model.value.Result;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;

/** Turns records into FHIR. */
@Command(
    name = "to-fhir",
    description = "Turns records into FHIR R4 bundles.",
    footer = {
      "",
      "Examples:",
      "  isopter to-fhir docs/demo/01-harbour-pilot.yaml",
      "  isopter to-fhir docs/demo --output target/bundles/",
      "  isopter to-fhir docs/demo --as transaction --output target/all.ndjson"
    })
final class ToFhirCommand extends ConvertCommand {

  @Option(
      names = "--as",
      paramLabel = "KIND",
      defaultValue = "collection",
      description = {
        "Kind of bundle: ${COMPLETION-CANDIDATES} (default: ${DEFAULT-VALUE}).",
        "A transaction is for a server; sending it twice changes nothing."
      })
  BundleKind kind = BundleKind.COLLECTION;

  @Option(
      names = "--derived",
      description = "Add what follows from the findings, as observations of their own.")
  boolean derived;

  @Option(
      names = "--format",
      paramLabel = "FORM",
      description = {
        "Form of the output: ${COMPLETION-CANDIDATES}.",
        "Unless given, json for one record and ndjson for several."
      })
  @Nullable FhirForm format;

  @Mixin final RecordInputs forms = new RecordInputs();

  ToFhirCommand(Streams streams) {
    super(streams);
  }

  @Override
  InputForms forms() {
    return forms;
  }

  @Override
  Optional<Form> wanted() {
    return Optional.ofNullable(format).map(FhirForm::form);
  }

  @Override
  Form usual() {
    return Form.JSON;
  }

  @Override
  Function<Item, Result<String>> step(Form form) {
    Records records = new Records();
    Bundles bundles = new Bundles(kind, derived);
    FhirForm fhir = FhirForm.valueOf(form.name());
    return item -> records.read(item).map(exam -> bundles.write(exam, item.bytes(), fhir));
  }
}
