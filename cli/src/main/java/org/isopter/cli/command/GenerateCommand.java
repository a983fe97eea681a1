package org.isopter.cli.command;

import java.io.IOException;
import java.nio.file.Path;
import java.util.concurrent.Callable;
import java.util.function.Consumer;
import java.util.function.Function;
import org.isopter.cli.option.GenerateForm;
import org.isopter.mapper.fhir.BundleKind;
import org.isopter.mapper.fhir.FhirWriter;
import org.isopter.mapper.record.RecordWriter;
import org.isopter.model.exam.Exam;
import org.isopter.model.simulate.Cohort;
import org.isopter.task.generate.ParallelCohort;
import org.isopter.task.io.AtomicFile;
import org.isopter.task.io.Messages;
import org.isopter.task.io.Streams;
import org.isopter.task.io.UnwritableException;
import org.isopter.task.io.Utf8;
import org.isopter.task.report.ExitStatus;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine;
import picocli.CommandLine.Command;
import picocli.CommandLine.Option;
import picocli.CommandLine.ParameterException;

/** Writes examinations of invented persons. */
@Command(
    name = "generate",
    description = {
      "Writes examinations of invented persons, one a line: for tests, demonstrations and load.",
      "The persons do not exist, and nothing in it may be taken as epidemiology.",
      "The same seed writes the same lines: person by person, each from the first visit on."
    },
    footer = {
      "",
      "Examples:",
      "  isopter generate --persons 3 --seed 7",
      "  isopter generate --persons 100 --seed 7 --output target/invented.ndjson",
      "  isopter generate --persons 100 --format fhir-ndjson --output target/invented-fhir.ndjson"
    })
public final class GenerateCommand implements Callable<Integer> {

  private final Streams streams;

  @Option(
      names = "--persons",
      required = true,
      paramLabel = "COUNT",
      description = "How many persons, each with 1 to 5 visits.")
  private int persons;

  @Option(
      names = "--seed",
      paramLabel = "NUMBER",
      defaultValue = "1",
      description = "Another seed makes other persons (default: ${DEFAULT-VALUE}).")
  private long seed;

  @Option(
      names = {"-o", "--output"},
      paramLabel = "FILE",
      description = "Where to write; standard output unless given, and for -.")
  private @Nullable String output;

  @Option(
      names = "--format",
      paramLabel = "FORM",
      defaultValue = "ndjson",
      converter = GenerateForm.Reader.class,
      description = {
        "A line is a record or a FHIR R4 collection bundle:",
        "${COMPLETION-CANDIDATES} (default: ${DEFAULT-VALUE})."
      })
  private GenerateForm format = GenerateForm.NDJSON;

  @Option(
      names = {"-h", "--help"},
      usageHelp = true,
      description = "Show this help.")
  boolean help;

  @CommandLine.Spec private CommandLine.Model.CommandSpec spec;

  /** Picocli sets the spec. */
  @SuppressWarnings("NullAway.Init")
  public GenerateCommand(Streams streams) {
    this.streams = streams;
  }

  @Override
  public Integer call() {
    if (persons < 1) {
      throw new ParameterException(
          spec.commandLine(), "--persons " + persons + ": wanted 1 or more");
    }
    ParallelCohort batches = new ParallelCohort(new Cohort(persons, seed), form());
    int exams = output == null || output.equals("-") ? toStream(batches) : toFile(batches, output);
    say(exams);
    return ExitStatus.OK;
  }

  private Function<Exam, String> form() {
    return switch (format) {
      case NDJSON -> new RecordWriter()::line;
      case FHIR_NDJSON -> FhirWriter.of(BundleKind.COLLECTION)::write;
    };
  }

  private int toStream(ParallelCohort batches) {
    return batches.each(
        lines -> {
          Utf8.write(streams.out(), "standard output", lines);
          // A reader that has gone shows only when the bytes leave, and the run could be long.
          streams.out().flush();
        });
  }

  private static int toFile(ParallelCohort batches, String name) {
    try (AtomicFile file = AtomicFile.at(Path.of(name))) {
      Consumer<String> to = lines -> Utf8.write(file, name, lines);
      int exams = batches.each(to);
      file.commit();
      return exams;
    } catch (IOException failed) {
      throw new UnwritableException(name, failed);
    }
  }

  private void say(int exams) {
    streams
        .err()
        .println(
            "isopter: %s of %s, all invented (seed %s): not to be taken as epidemiology"
                .formatted(
                    Messages.count(exams, "examination"), Messages.count(persons, "person"), seed));
  }
}
