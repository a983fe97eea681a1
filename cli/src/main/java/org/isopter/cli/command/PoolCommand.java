package org.isopter.cli.command;

import java.io.IOException;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import org.isopter.cli.option.ForeignOptions;
import org.isopter.cli.option.KeyOptions;
import org.isopter.cli.option.PersonOptions;
import org.isopter.cli.option.PoolInputs;
import org.isopter.mapper.pool.PersonsFile;
import org.isopter.mapper.pool.PoolPlan;
import org.isopter.mapper.pool.PoolReader;
import org.isopter.mapper.pool.PoolResult;
import org.isopter.mapper.pool.PoolRun;
import org.isopter.mapper.privacy.Deidentifier;
import org.isopter.mapper.privacy.SecretKey;
import org.isopter.mapper.store.TableFormat;
import org.isopter.model.catalogue.Catalogue;
import org.isopter.model.value.FaultException;
import org.isopter.model.value.Result;
import org.isopter.task.input.InputForms;
import org.isopter.task.input.InputSource;
import org.isopter.task.io.Streams;
import org.isopter.task.io.UnwritableException;
import org.isopter.task.pool.LeftOverReport;
import org.isopter.task.pool.PoolFeed;
import org.isopter.task.pool.PoolPlaces;
import org.isopter.task.pool.PoolReport;
import org.isopter.task.report.ExitStatus;
import org.isopter.task.report.Progress;
import org.isopter.task.report.RunLog;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;

/** Lays examinations out as research tables. */
@Command(
    name = "pool",
    description = {
      "Lays records and FHIR of any system out as tables for research, with a codebook.",
      "Identities are taken out: pseudonyms by a secret key, all dates of a person moved alike,",
      "no names, no instruments, no free text. What could not be read is listed with reasons."
    },
    footer = {
      "",
      "Examples:",
      "  isopter pool docs/demo --key-file docs/key-for-the-demo.txt -o target/pool --replace",
      "  isopter pool docs/demo --identified --format csv -o target/known --replace",
      "",
      "A rare finding or course may still be known again: who may see the tables is for local rules."
    })
public final class PoolCommand extends InputCommand {

  @Option(
      names = {"-o", "--output"},
      paramLabel = "FOLDER",
      required = true,
      description = "Folder to make; it may not hold anything yet.")
  Path output = Path.of("");

  @Option(
      names = "--replace",
      description = "Put the new pool in the place of an older one in that folder.")
  boolean replace;

  @Option(
      names = "--format",
      paramLabel = "FORM",
      split = ",",
      description = "Formats of the tables: ${COMPLETION-CANDIDATES} (default: parquet).")
  List<TableFormat> formats = List.of(TableFormat.PARQUET);

  @Option(names = "--database", description = "Leave the tables as a DuckDB file too.")
  boolean database;

  @Option(names = "--bundles", description = "Write the examinations as FHIR bundles too.")
  boolean bundles;

  @Mixin final KeyOptions key = new KeyOptions();

  @Mixin final PersonOptions people = new PersonOptions();

  @Option(names = "--identified", description = "Keep identities; then no key is needed.")
  boolean identified;

  @Option(names = "--free-text", description = "Keep remarks, which may name anyone.")
  boolean freeText;

  @Option(
      names = "--leftover",
      paramLabel = "FILE",
      description = "Write what was left over word for word; it holds identities.")
  @Nullable Path leftover;

  @Option(
      names = "--origins",
      paramLabel = "FILE",
      description = "Write where each examination was read; it leads back to persons.")
  @Nullable Path origins;

  @Option(
      names = "--omop",
      paramLabel = "FOLDER",
      description = {
        "Lay out tables of the OMOP Common Data Model too, with the concept ids",
        "of the vocabulary (CONCEPT.csv) in FOLDER."
      })
  @Nullable Path omop;

  @Option(
      names = "--trait",
      paramLabel = "COLUMN",
      split = ",",
      description = "Columns by which a person might be known (default: age,sex,setting).")
  List<String> traits = PoolPlan.USUAL_TRAITS;

  @Option(
      names = "--small-cell",
      paramLabel = "N",
      defaultValue = "5",
      description = "List groups of traits that fewer than N persons share (default: 5).")
  int smallCell = PoolPlan.USUAL_SMALLEST;

  @Option(
      names = "--suppress",
      description = {
        "Put ages into bands, and take persons out who share their traits with fewer",
        "than the persons of a small cell."
      })
  boolean suppress;

  @Mixin final PoolInputs forms = new PoolInputs();

  @Mixin final ForeignOptions ways = new ForeignOptions();

  public PoolCommand(Streams streams) {
    super(streams);
  }

  @Override
  InputForms forms() {
    return forms;
  }

  @Override
  public void run(RunLog journal) {
    Optional<Deidentifier> deidentifier = deidentifier();
    List<InputSource> sources = sources(journal);
    if (sources.isEmpty() && journal.status() != ExitStatus.OK) {
      journal.say("no input was found: nothing was written to " + output);
      return;
    }
    new PoolPlaces(output, leftover, origins)
        .clash(sources)
        .ifPresent(
            fault -> {
              throw misuse(fault.toString());
            });
    PoolReader reader = new PoolReader(Catalogue.standard(), ways.options(), ways.release);
    Optional<PersonsFile> persons = persons();
    Optional<Deidentifier> older = older();
    try (Progress progress = Progress.on(streams, "documents");
        PoolRun run =
            PoolRun.begin(Catalogue.standard(), reader, plan(deidentifier))
                .knowing(persons)
                .rotatedFrom(older)
                .reporting(new LeftOverReport(journal, sources)::tell)) {
      new PoolFeed(run.telling(progress::at), InputSource::name).feed(journal, sources);
      PoolResult result = run.finish();
      progress.end();
      new PoolReport(journal).tell(result, persons, output);
    } catch (FaultException refused) {
      throw misuse(refused.faults().get(0).toString());
    } catch (IOException failed) {
      throw new UnwritableException(output.toString(), failed);
    }
  }

  private Optional<PersonsFile> persons() {
    try {
      return people.file();
    } catch (FaultException refused) {
      throw misuse(refused.faults().get(0).toString());
    }
  }

  private PoolPlan plan(Optional<Deidentifier> deidentifier) {
    if (smallCell < 1) {
      throw misuse("--small-cell " + smallCell + ": wanted a number from 1 on");
    }
    if (suppress && bundles) {
      throw misuse("--suppress with --bundles: bundles are written before persons can be counted");
    }
    PoolPlan plan =
        deidentifier
            .map(one -> PoolPlan.of(output, one))
            .orElseGet(() -> PoolPlan.identified(output))
            .in(formats)
            .leaving(Optional.ofNullable(leftover))
            .tracing(Optional.ofNullable(origins))
            .omop(Optional.ofNullable(omop))
            .risk(smallCell, traits, suppress);
    plan = replace ? plan.replacing() : plan;
    plan = database ? plan.withDatabase() : plan;
    return bundles ? plan.withBundles() : plan;
  }

  private Optional<Deidentifier> deidentifier() {
    Optional<Result<SecretKey>> found = key.find(System.getenv());
    if (identified) {
      return Optional.empty();
    }
    Result<SecretKey> secret =
        found.orElseThrow(
            () ->
                misuse(
                    "no key: pseudonyms are made from a secret; name a file that holds one with"
                        + " --key-file, set "
                        + SecretKey.VARIABLE
                        + ", or say --identified to keep identities"));
    return Optional.of(deidentifier(secret));
  }

  private Deidentifier deidentifier(Result<SecretKey> secret) {
    if (secret instanceof Result.Ok<SecretKey> good) {
      return people.apply(new Deidentifier(key.scoped(good.value()), freeText));
    }
    throw misuse(secret.faults().get(0).toString());
  }

  /** Pseudonyms of an older key stand in the file of origins, and nowhere else. */
  private Optional<Deidentifier> older() {
    Optional<Deidentifier> older = key.older().map(this::deidentifier);
    if (older.isPresent() && (origins == null || identified)) {
      throw misuse("--older-key-file: wanted --origins beside it, and no --identified");
    }
    return older;
  }
}
