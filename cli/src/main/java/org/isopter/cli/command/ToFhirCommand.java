package org.isopter.cli.command;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.EnumSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import org.isopter.cli.option.RecordInputs;
import org.isopter.mapper.fhir.BundleKind;
import org.isopter.task.convert.Bundles;
import org.isopter.task.convert.CarriedLookup;
import org.isopter.task.convert.ToFhirConversion;
import org.isopter.task.input.FhirForm;
import org.isopter.task.input.InputForm;
import org.isopter.task.input.InputForms;
import org.isopter.task.input.InputSource;
import org.isopter.task.io.Messages;
import org.isopter.task.io.Streams;
import org.isopter.task.output.FileOutput;
import org.isopter.task.output.FolderOutput;
import org.isopter.task.output.Output;
import org.isopter.task.report.RunLog;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;

/** Turns records into FHIR. */
@Command(
    name = "to-fhir",
    description = {
      "Turns records into FHIR R4 bundles.",
      "What from-fhir kept beside a record is put back."
    },
    footer = {
      "",
      "Examples:",
      "  isopter to-fhir docs/demo/01-harbour-pilot.yaml",
      "  isopter to-fhir docs/demo --output target/bundles/",
      "  isopter to-fhir docs/demo --as transaction --output target/all.ndjson"
    })
public final class ToFhirCommand extends InputCommand {

  @Option(
      names = {"-o", "--output"},
      paramLabel = "FILE|FOLDER",
      description = {
        "Where to write; standard output unless given.",
        "A FOLDER (it exists, or ends in /) gets a file for each input."
      })
  @Nullable String output;

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
        "Unless given or told by the name of FILE, json for one record and ndjson for several."
      })
  @Nullable FhirForm format;

  @Option(
      names = "--carried",
      paramLabel = "FILE",
      description = {
        "Where from-fhir kept what no rule took, to be put back.",
        "Unless given, the file beside the records, RECORDS.carried, where there is one."
      })
  @Nullable Path carried;

  @Mixin final RecordInputs forms = new RecordInputs();

  public ToFhirCommand(Streams streams) {
    super(streams);
  }

  @Override
  InputForms forms() {
    return new InputForms() {
      @Override
      public Optional<InputForm> stated() {
        return forms.stated();
      }

      @Override
      public Set<InputForm> accepted() {
        Set<InputForm> accepted = EnumSet.of(InputForm.CARRIED);
        accepted.addAll(forms.accepted());
        return accepted;
      }
    };
  }

  @Override
  public void run(RunLog journal) {
    boolean several = inputs.size() > 1 || Files.isDirectory(Path.of(inputs.get(0)));
    List<InputSource> sources = sources(journal);
    keep(sources, "--output", output);
    several |= sources.size() > 1 || sources.stream().anyMatch(InputSource::mayHoldSeveral);
    InputForm form = wanted().orElse(several && !toFolder() ? InputForm.NDJSON : InputForm.JSON);
    check(form, several);
    Bundles bundles = new Bundles(kind, derived);
    try (CarriedLookup along = new CarriedLookup(carried, journal)) {
      ToFhirConversion conversion =
          new ToFhirConversion(journal, bundles, FhirForm.valueOf(form.name()), along);
      boolean single = form != InputForm.NDJSON && !toFolder();
      (single ? conversion.single() : conversion).run(sources, output(form, sources));
    }
    summary(journal, form);
  }

  private void check(InputForm form, boolean several) {
    if (toFolder() && form == InputForm.NDJSON) {
      throw misuse("--format ndjson is one stream: give --output a file, not a folder");
    }
    if (several && !toFolder() && form != InputForm.NDJSON) {
      throw misuse(
          "--format %s holds one document: give --output a folder, or take --format ndjson"
              .formatted(form));
    }
  }

  private Output output(InputForm form, List<InputSource> sources) {
    if (output == null) {
      return Output.to(streams.out());
    }
    Path target = Path.of(output);
    return toFolder()
        ? new FolderOutput(target, form, sources)
        : new FileOutput(target, form == InputForm.NDJSON);
  }

  private boolean toFolder() {
    return output != null && (output.endsWith("/") || Files.isDirectory(Path.of(output)));
  }

  /** Says what was done where the output itself does not show it. */
  private void summary(RunLog journal, InputForm form) {
    if (output != null || journal.refused() > 0) {
      String where = output == null ? "" : " to " + output;
      String refused = journal.refused() == 0 ? "" : ", " + journal.refused() + " refused";
      journal.say(
          Messages.count(journal.done(), "document") + " written as " + form + where + refused);
    }
  }

  /** Returns the form that is asked for, by the option or by the name of the file. */
  private Optional<InputForm> wanted() {
    if (format != null) {
      return Optional.of(format.form());
    }
    return output == null || toFolder()
        ? Optional.empty()
        : InputForm.ofFileName(output).filter(FhirForm.ALL::contains);
  }
}
