package org.isopter.spark;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.sql.SQLException;
import java.util.Arrays;
import java.util.List;
import java.util.concurrent.CompletableFuture;
import java.util.concurrent.ExecutionException;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.TimeoutException;
import java.util.concurrent.atomic.AtomicInteger;
import org.apache.spark.scheduler.SparkListener;
import org.apache.spark.scheduler.SparkListenerExecutorRemoved;
import org.apache.spark.sql.Dataset;
import org.apache.spark.sql.Row;
import org.apache.spark.sql.SparkSession;
import org.apache.spark.sql.types.StructType;
import org.isopter.mapper.pool.PoolResult;
import org.isopter.mapper.table.ExaminationsTable;
import org.isopter.mapper.table.FindingsTable;
import org.isopter.mapper.table.Table;
import org.isopter.model.catalogue.Catalogue;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Two workers make of the same files what one machine makes, also when one of them is killed. */
class SparkPoolTest {

  private static final Identities IDENTITIES = Identities.taken(TestFiles.SECRET, false).orThrow();

  @TempDir static Path folder;
  private static SparkSession session;
  private static PoolResult here;

  @BeforeAll
  static void start() throws IOException {
    TestFiles.write(folder.resolve("in"));
    here = TestFiles.poolHere(folder.resolve("in"), folder.resolve("here"));
    Files.createDirectories(folder.resolve("marks"));
    session = Cluster.twoWorkers(folder.resolve("marks"));
  }

  @AfterAll
  static void stop() {
    if (session != null) {
      session.stop();
    }
  }

  @Test
  void twoWorkersMakeTheTablesOfOneMachine() throws IOException, SQLException {
    Path there = folder.resolve("there");
    Totals totals =
        new SparkPool(session)
            .run(List.of(folder.resolve("in").toString()), there.toString(), IDENTITIES);
    compare(there, totals);
  }

  /** A reader of Parquet that did not write these files. */
  @Test
  void sparkReadsTheParquetOfOneMachine() {
    assertEquals(here.tables().findings(), read(FindingsTable.table()).count());
    assertEquals(here.tables().eyes(), read(ExaminationsTable.table(Catalogue.standard())).count());
    assertEquals(
        1,
        read(FindingsTable.table())
            .filter("finding = 'intraocular-pressure' AND number = 17 AND rules <> ''")
            .select("subject", "number", "unit", "time")
            .distinct()
            .count());
  }

  /** Reads a table, whose types have to be those of its columns. */
  private static Dataset<Row> read(Table<?> table) {
    Dataset<Row> rows =
        session.read().parquet(folder.resolve("here/" + table.name() + ".parquet").toString());
    assertEquals(types(Schemas.of(table)), types(rows.schema()));
    return rows;
  }

  private static List<String> types(StructType schema) {
    return Arrays.stream(schema.fields())
        .map(field -> field.name() + " " + field.dataType().simpleString())
        .toList();
  }

  @Test
  void aKilledWorkerLosesNothingAndDoublesNothing()
      throws IOException, SQLException, InterruptedException, ExecutionException, TimeoutException {
    AtomicInteger lost = new AtomicInteger();
    session.sparkContext().addSparkListener(new Losses(lost));
    Path there = folder.resolve("killed");
    Files.createFile(folder.resolve("marks/shut"));
    String in = folder.resolve("in").toString();
    CompletableFuture<Totals> running =
        CompletableFuture.supplyAsync(() -> run(in, there.toString()));
    Gate.await(folder.resolve("marks/held"), running::isDone);
    assertFalse(running.isDone(), "the job ended before a worker was held");
    long victim = Long.parseLong(Files.readString(folder.resolve("marks/held")));
    ProcessHandle worker =
        ProcessHandle.current()
            .descendants()
            .filter(each -> each.pid() == victim)
            .findAny()
            .orElseThrow();
    assertTrue(worker.destroyForcibly());
    Files.createFile(folder.resolve("marks/open"));
    Totals totals = running.get(2, TimeUnit.MINUTES);
    assertEquals(1, lost.get());
    compare(there, totals);
  }

  private static Totals run(String in, String out) {
    try {
      return new SparkPool(session).run(List.of(in), out, IDENTITIES);
    } catch (IOException failed) {
      throw new java.io.UncheckedIOException(failed);
    }
  }

  private static void compare(Path there, Totals totals) throws IOException, SQLException {
    assertEquals(here.counts(), totals.counts());
    assertEquals(here.tables().findings(), totals.findings());
    assertEquals(here.tables().eyes(), totals.eyes());
    assertEquals(here.risk().smallCells(), totals.small());
    assertTrue(totals.findings() > 1000, totals.toString());
    try (Comparison comparison = new Comparison(folder.resolve("here"), there)) {
      comparison.assertSame();
    }
    assertEquals(totals.json(), Files.readString(there.resolve("counts.json")));
  }

  /** Counts the workers that were lost. */
  private static final class Losses extends SparkListener {
    private final AtomicInteger lost;

    Losses(AtomicInteger lost) {
      this.lost = lost;
    }

    @Override
    public void onExecutorRemoved(SparkListenerExecutorRemoved removed) {
      lost.incrementAndGet();
    }
  }
}
