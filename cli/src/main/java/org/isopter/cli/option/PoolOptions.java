package org.isopter.cli.option;

import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import org.isopter.mapper.pool.PoolPlan;
import org.isopter.mapper.pool.PoolReader;
import org.isopter.mapper.privacy.Deidentifier;
import org.isopter.mapper.privacy.SecretKey;
import org.isopter.mapper.store.TableFormat;
import org.isopter.task.pool.PoolRequest;
import org.isopter.task.pool.PoolTask;
import org.isopter.task.report.RunLog;
import org.isopter.task.report.UsageException;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;

/** Which tables are made of examinations, and what is taken out of them. */
public final class PoolOptions {

  @Option(
      names = {"-o", "--output"},
      paramLabel = "FOLDER",
      required = true,
      description = "Folder to make; it may not hold anything yet.")
  private Path output = Path.of("");

  @Option(
      names = "--replace",
      description = "Put the new pool in the place of an older one in that folder.")
  private boolean replace;

  @Option(
      names = "--add",
      description = {
        "Add what is new to the pool in that folder, or begin one that can be added to: a",
        "document that it holds already is not read again."
      })
  private boolean add;

  @Option(
      names = "--format",
      paramLabel = "FORM",
      split = ",",
      description = "Formats of the tables: ${COMPLETION-CANDIDATES} (default: parquet).")
  private List<TableFormat> formats = List.of(TableFormat.PARQUET);

  @Option(names = "--database", description = "Leave the tables as a DuckDB file too.")
  private boolean database;

  @Option(names = "--bundles", description = "Write the examinations as FHIR bundles too.")
  private boolean bundles;

  @Mixin private final PersonOptions people = new PersonOptions();

  @Mixin private final StrictOption strict = new StrictOption();

  @Mixin private final KeyOptions key = new KeyOptions();

  @Option(names = "--identified", description = "Keep identities; then no key is needed.")
  private boolean identified;

  @Option(names = "--free-text", description = "Keep remarks, which may name anyone.")
  private boolean freeText;

  @Option(
      names = "--leftover",
      paramLabel = "FILE",
      description = "Write what was left over word for word; it holds identities.")
  private @Nullable Path leftover;

  @Option(
      names = "--origins",
      paramLabel = "FILE",
      description = "Write where each examination was read; it leads back to persons.")
  private @Nullable Path origins;

  @Option(
      names = "--omop",
      paramLabel = "FOLDER",
      description = {
        "Lay out tables of the OMOP Common Data Model too, with the concept ids",
        "of the vocabulary (CONCEPT.csv) in FOLDER."
      })
  private @Nullable Path omop;

  @Mixin private final RiskOptions risk = new RiskOptions();

  /**
   * Returns the task.
   *
   * @param reader reads the inputs
   * @throws UsageException when there is no key, options contradict each other, or the file of
   *     persons cannot be read
   */
  public PoolTask task(RunLog log, PoolReader reader) {
    return new PoolTask(
        log, reader, new PoolRequest(plan(log), people.file(), older(), strict.strict()));
  }

  private PoolPlan plan(RunLog log) {
    if (identified && people.changes()) {
      throw new UsageException("--round or --site with --identified: wanted a key instead");
    }
    PoolPlan plan =
        (identified ? PoolPlan.identified(output) : PoolPlan.of(output, deidentifier(log)))
            .in(formats)
            .leaving(Optional.ofNullable(leftover))
            .tracing(Optional.ofNullable(origins))
            .omop(Optional.ofNullable(omop));
    plan = risk.in(plan);
    plan = replace ? plan.replacing() : plan;
    plan = add ? adding(plan) : plan;
    plan = database ? plan.withDatabase() : plan;
    return bundles ? risk.withBundles(plan) : plan;
  }

  private PoolPlan adding(PoolPlan plan) {
    if (replace || identified || plan.suppress()) {
      throw new UsageException(
          "--add with --replace, --identified or --suppress: wanted --add without them");
    }
    return plan.adding();
  }

  private Deidentifier deidentifier(RunLog log) {
    return deidentifier(key.require(System.getenv(), log));
  }

  private Deidentifier deidentifier(SecretKey secret) {
    return people.apply(new Deidentifier(secret, freeText));
  }

  /** Pseudonyms of an older key stand in the file of origins, and nowhere else. */
  private Optional<Deidentifier> older() {
    Optional<SecretKey> older = key.older();
    if (older.isPresent() && (origins == null || identified)) {
      throw new UsageException("--older-key-file: wanted --origins beside it, and no --identified");
    }
    return older.map(this::deidentifier);
  }
}
