package org.isopter.cli.option;

import java.nio.file.Path;
import java.time.OffsetDateTime;
import java.util.List;
import java.util.Optional;
import org.isopter.mapper.fhir.GivenOut;
import org.isopter.task.convert.ToFhirRequest;
import org.isopter.task.input.InputForm;
import org.isopter.task.output.Target;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;

/** What records are turned into. */
public final class ToFhirOptions {

  @Option(
      names = {"-o", "--output"},
      paramLabel = "FILE|FOLDER",
      description = {
        "Where to write; standard output unless given.",
        "A FOLDER (it exists, or ends in /) gets a file for each input."
      })
  private @Nullable String output;

  @Mixin private final KindOption as = new KindOption();

  @Option(
      names = "--derived",
      description = "Add what follows from the findings, as observations of their own.")
  private boolean derived;

  @Option(
      names = "--search-patients",
      description = {
        "With --as transaction: refer to each person also by a search for the identifier.",
        "The server puts its own Patient in its place, and refuses where it has none."
      })
  private boolean patients;

  @Option(
      names = "--patient-addresses",
      description = {
        "Refer to each person also by Patient/ID, the ID a UUID of the identifier: for views,",
        "and for servers that have the patient under it. No Patient is written."
      })
  private boolean addresses;

  @Option(
      names = "--format",
      paramLabel = "FORM",
      converter = FormWord.OfFhir.class,
      completionCandidates = FormWord.OfFhir.class,
      description = {
        "Form of the output: ${COMPLETION-CANDIDATES}.",
        "Unless given or known by the name of FILE, json for one record and ndjson for several."
      })
  private @Nullable InputForm format;

  @Option(
      names = "--carried",
      paramLabel = "FILE",
      description = {
        "Where from-fhir kept what no rule took, to be put back.",
        "Unless given, the file beside the records, RECORDS.carried, where there is one."
      })
  private @Nullable Path carried;

  @Option(
      names = "--former",
      paramLabel = "FILE|FOLDER",
      description = {
        "With --as transaction: the records as they were sent before.",
        "What one held, and its later version or the one that amends it does not, is sent again as"
            + " entered in error."
      })
  private List<String> former = List.of();

  @Option(
      names = "--issued",
      paramLabel = "TIME",
      converter = ForeignOptions.Time.class,
      description =
          "When the report is given out, with its offset; no record tells it:"
              + " 2026-03-03T11:00:00+01:00.")
  private @Nullable OffsetDateTime issued;

  @Option(
      names = "--conclusion",
      description = {
        "Put what follows from the findings into the report's conclusion, in the words of the"
            + " letter",
        "and marked as derived."
      })
  private boolean conclusion;

  @Mixin private final StrictOption strict = new StrictOption();

  /** Returns what is asked for. */
  public ToFhirRequest request() {
    return new ToFhirRequest(
        Target.of(output),
        Optional.ofNullable(format),
        as.kind(),
        derived,
        patients,
        addresses,
        Optional.ofNullable(carried),
        former,
        new GivenOut(Optional.ofNullable(issued), conclusion),
        strict.strict());
  }
}
