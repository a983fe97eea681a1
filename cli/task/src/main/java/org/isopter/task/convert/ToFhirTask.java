package org.isopter.task.convert;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import org.isopter.mapper.fhir.BundleKind;
import org.isopter.task.input.InputForm;
import org.isopter.task.input.InputSource;
import org.isopter.task.input.Inputs;
import org.isopter.task.io.Messages;
import org.isopter.task.output.FileOutput;
import org.isopter.task.output.FolderOutput;
import org.isopter.task.output.Output;
import org.isopter.task.output.Target;
import org.isopter.task.report.RecordErrors;
import org.isopter.task.report.RunLog;
import org.isopter.task.report.UsageException;

/** Turns records into FHIR R4 bundles and puts back what was kept beside the records. */
public final class ToFhirTask {

  private final RunLog log;
  private final ToFhirRequest request;
  private final Target target;

  public ToFhirTask(RunLog log, ToFhirRequest request) {
    this.log = log;
    this.request = request;
    this.target = request.target();
  }

  /**
   * Turns every record into a bundle; what is no record is in the log, and refused.
   *
   * @throws UsageException when the target cannot hold so many documents, or is an input
   */
  public void run(Inputs inputs) {
    boolean several =
        inputs.names().size() > 1 || Files.isDirectory(Path.of(inputs.names().get(0)));
    List<InputSource> sources = inputs.accepting(InputForm.CARRIED).find(log);
    Inputs.refuseToOverwrite(sources, "--output", target.name().orElse(null));
    several |= sources.size() > 1 || sources.stream().anyMatch(InputSource::mayHoldSeveral);
    InputForm form =
        target
            .form(request.form(), InputForm.OF_FHIR)
            .orElse(several && !target.isFolder() ? InputForm.NDJSON : InputForm.JSON);
    check(form, several);
    FormerRecords former = FormerRecords.of(request.former(), target, log);
    convert(sources, form, former);
    former.sum(log);
    sum(form);
  }

  private void check(InputForm form, boolean several) {
    if (request.patients() && request.kind() != BundleKind.TRANSACTION) {
      throw new UsageException("--search-patients is for a server: give --as transaction too");
    }
    if (request.patients() && request.addresses()) {
      throw new UsageException("--search-patients with --patient-addresses: wanted one of them");
    }
    if (!request.former().isEmpty() && request.kind() != BundleKind.TRANSACTION) {
      throw new UsageException("--former is for a server: give --as transaction too");
    }
    if (target.isFolder() && form == InputForm.NDJSON) {
      throw new UsageException("--format ndjson is one stream: give --output a file, not a folder");
    }
    if (several && !target.isFolder() && form != InputForm.NDJSON) {
      throw new UsageException(
          "--format %s holds one document: give --output a folder, or take --format ndjson"
              .formatted(form));
    }
  }

  private void convert(List<InputSource> sources, InputForm form, FormerRecords former) {
    Bundles bundles =
        new Bundles(request.kind(), request.derived(), request.patients(), request.addresses())
            .takingBack(former)
            .reporting(request.report());
    RecordErrors errors = new RecordErrors(log, request.strict());
    try (CarriedLookup carried = new CarriedLookup(request.carried().orElse(null), log)) {
      ToFhirConversion conversion = new ToFhirConversion(log, bundles, form, carried, errors);
      boolean single = form != InputForm.NDJSON && !target.isFolder();
      (single ? conversion.single() : conversion).run(sources, output(form, sources));
    }
    errors.sum();
  }

  private Output output(InputForm form, List<InputSource> sources) {
    Optional<Path> path = target.path();
    if (path.isEmpty()) {
      return Output.to(log.data());
    }
    return target.isFolder()
        ? new FolderOutput(path.get(), form, sources)
        : new FileOutput(path.get(), form == InputForm.NDJSON);
  }

  /** Says what was done where the output itself does not show it. */
  private void sum(InputForm form) {
    if (target.name().isPresent() || log.refused() > 0) {
      String where = target.name().map(name -> " to " + name).orElse("");
      String refused = log.refused() == 0 ? "" : ", " + log.refused() + " refused";
      log.say(Messages.count(log.done(), "document") + " written as " + form + where + refused);
    }
  }
}
