package org.isopter.task.convert;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Optional;
import org.isopter.mapper.foreign.run.Together;
import org.isopter.task.input.InputForm;
import org.isopter.task.input.Inputs;
import org.isopter.task.output.Target;

/**
 * What FHIR is turned into.
 *
 * @param target where records go
 * @param form the form of the records; empty to take the one that the target's name says, or else
 *     YAML for one examination of one input and in a folder, and lines of JSON for several
 * @param carried the file of what no rule takes; empty for one beside the records
 * @param table the file of what became of each resource, {@code -} for the words of the log; empty
 *     for none
 * @param reading how FHIR is read
 * @param report the file of OperationOutcomes of a run over lines, which writes it itself, since it
 *     has to cut it to where it goes on; empty for none
 * @param resume whether to go on where a run over lines was stopped
 */
public record FromFhirRequest(
    Target target,
    Optional<InputForm> form,
    Optional<Path> carried,
    Optional<String> table,
    ReadingOptions reading,
    Optional<Path> report,
    boolean resume) {

  /** Returns a request for records, with what no rule takes kept beside them. */
  public static FromFhirRequest to(Target target) {
    return new FromFhirRequest(
        target,
        Optional.empty(),
        Optional.empty(),
        Optional.empty(),
        ReadingOptions.USUAL,
        Optional.empty(),
        false);
  }

  /** Returns the form that is asked for, by itself or by the name of the target. */
  Optional<InputForm> wanted() {
    return target.form(form, InputForm.OF_RECORDS);
  }

  /**
   * Says whether this is a run over lines: one file of lines into another, in blocks and constant
   * memory, that can be stopped and resumed.
   */
  public boolean isLines(Inputs inputs) {
    if (target.name().isEmpty() || target.isFolder() || inputs.names().size() != 1) {
      return false;
    }
    String name = inputs.names().get(0);
    Optional<InputForm> from = inputs.stated().or(() -> InputForm.ofFileName(name));
    Path to = target.path().orElseThrow();
    return from.equals(Optional.of(InputForm.NDJSON))
        && Files.isRegularFile(Path.of(name))
        && wanted().orElse(InputForm.NDJSON) == InputForm.NDJSON
        && (!Files.exists(to) || Files.isRegularFile(to))
        && reading.together() != Together.ALL;
  }
}
