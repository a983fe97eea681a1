package org.isopter.task.pool;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.security.SecureRandom;
import java.util.HexFormat;
import java.util.List;
import java.util.Optional;
import java.util.function.Consumer;
import org.isopter.mapper.io.Passing;
import org.isopter.mapper.pool.Flawed;
import org.isopter.mapper.pool.PoolPlan;
import org.isopter.mapper.pool.PoolReader;
import org.isopter.mapper.pool.PoolRun;
import org.isopter.mapper.privacy.Deidentifier;
import org.isopter.mapper.privacy.SecretKey;
import org.isopter.model.catalogue.Catalogue;
import org.isopter.task.input.InputSource;
import org.isopter.task.report.Position;
import org.isopter.task.report.RecordErrors;
import org.isopter.task.report.RunLog;

/** A temporary pool for one description; only its owner may read it, and it is deleted on close. */
public final class TemporaryPool implements AutoCloseable {

  private final Path folder;
  private final PoolReader reader;

  private TemporaryPool(Path folder, PoolReader reader) {
    this.folder = folder;
    this.reader = reader;
  }

  /**
   * Begins a pool in a folder that is deleted when it is closed.
   *
   * @throws IOException when no passing folder can be made
   */
  public static TemporaryPool make(PoolReader reader) throws IOException {
    // A temporary folder is its owner's alone.
    return new TemporaryPool(Passing.add(Files.createTempDirectory("isopter")), reader);
  }

  /**
   * Pools the sources and returns the folder with the tables.
   *
   * @throws IOException when an input cannot be read or a table not be written
   */
  public Path fill(RunLog log, List<InputSource> sources) throws IOException {
    Path tables = folder.resolve("pool");
    PoolPlan plan =
        PoolPlan.of(tables, new Deidentifier(passingKey(), false)).tracing(Optional.of(origins()));
    // A reader that does not look for errors names none; one that does refuses.
    RecordErrors errors = new RecordErrors(log, true);
    try (PoolRun run = PoolRun.begin(Catalogue.standard(), reader, plan).naming(errors(errors))) {
      new PoolFeed(run, InputSource::name).feed(log, sources);
      new PoolReport(log).tell(run.finish());
      errors.sum();
    }
    return tables;
  }

  private static Consumer<Flawed> errors(RecordErrors errors) {
    return one ->
        errors.name(new Position(one.source(), Math.toIntExact(one.line()), 0), one.errors());
  }

  /** Returns the file that says where each examination was read. */
  public Path origins() {
    return folder.resolve("origins.ndjson");
  }

  /** Nobody is named in what a run that is killed would leave on the disk. */
  private static SecretKey passingKey() {
    byte[] secret = new byte[32];
    new SecureRandom().nextBytes(secret);
    return SecretKey.of(HexFormat.of().formatHex(secret)).orThrow();
  }

  @Override
  public void close() throws IOException {
    Passing.delete(folder);
  }
}
