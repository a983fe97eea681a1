package org.isopter.mapper.pool;

import java.io.IOException;
import java.sql.SQLException;
import java.time.Instant;
import java.util.List;
import java.util.Optional;
import org.isopter.mapper.omop.OmopTables;
import org.isopter.mapper.privacy.RiskReport;
import org.isopter.mapper.privacy.SmallCells;
import org.isopter.mapper.privacy.StudyPeriod;
import org.isopter.mapper.privacy.Suppression;
import org.isopter.mapper.store.Codebook;
import org.isopter.mapper.store.TableDraft;
import org.isopter.mapper.store.TableStore;
import org.isopter.mapper.table.ExaminationsTable;
import org.isopter.mapper.table.EyeRow;
import org.isopter.mapper.table.FindingsTable;
import org.isopter.mapper.table.Table;

/** Makes the files of a pool of everything that was laid out, and gives its folder the name. */
final class PoolCompletion {

  /**
   * The file of the database that rows are laid out with. It is not the one that is left: what was
   * deleted in it still lies in the file, in the order of the input.
   */
  static final String WORKING = "working.duckdb";

  private static final String DATABASE = "tables.duckdb";

  private final PoolPlan plan;
  private final PoolFolder folder;
  private final TableStore store;
  private final PoolSink sink;
  private final Table<EyeRow> eyes;

  PoolCompletion(
      PoolPlan plan, PoolFolder folder, TableStore store, PoolSink sink, Table<EyeRow> eyes) {
    this.plan = plan;
    this.folder = folder;
    this.store = store;
    this.sink = sink;
    this.eyes = eyes;
  }

  /**
   * Completes the pool.
   *
   * @param period when the examinations of this run were
   * @param history what was read, where the pool can be added to
   * @throws SQLException when the database refuses it, for instance for a full disk
   * @throws IOException when a file cannot be written
   */
  PoolResult of(StudyPeriod period, Optional<PoolHistory> history)
      throws SQLException, IOException {
    sink.complete();
    store.endFilling();
    Suppression.Taken taken = suppress(period);
    PoolResult.Tables shared = shared();
    long filling = period.persons(store);
    long ageless = tell();
    PoolResult.Risk risk = risk(filling, taken);
    String provenance = RunProvenance.of(plan, sink.counts(), shared, taken, Instant.now());
    RunFiles.write(folder.file("provenance.json"), provenance);
    if (history.isPresent()) {
      history.get().write(folder.file(PoolHistory.FILE), sink.counts());
    }
    long skipped = history.map(PoolHistory::skipped).orElse(0L);
    PoolResult.Aside aside = new PoolResult.Aside(repeated(), ageless, skipped);
    settle();
    return new PoolResult(sink.counts(), shared, risk, aside);
  }

  private Suppression.Taken suppress(StudyPeriod period) throws SQLException, IOException {
    if (!plan.suppress()) {
      return Suppression.Taken.NOTHING;
    }
    Suppression.Taken taken =
        Suppression.apply(store, plan.traits(), plan.smallest(), eyes, period.longest());
    for (TableDraft table : sink.tables()) {
      table.settle();
    }
    return taken;
  }

  /** Writes what is said of the tables, and returns how many persons OMOP has no place for. */
  private long tell() throws SQLException, IOException {
    Codebook.of(store, sink.tables()).write(folder.file(""), plan.formats());
    return plan.vocabulary().isPresent()
        ? OmopTables.write(
            store, plan.vocabulary().get(), plan.formats(), folder.file(OmopTables.FOLDER))
        : 0;
  }

  private PoolResult.Risk risk(long filling, Suppression.Taken taken)
      throws SQLException, IOException {
    long cells =
        SmallCells.write(store, plan.traits(), plan.smallest(), folder.file("small-cells.csv"));
    long k =
        RiskReport.write(store, plan.traits(), plan.smallest(), eyes, folder.file(RiskReport.FILE));
    return new PoolResult.Risk(cells, k, filling, taken);
  }

  /** Gives the files and the folder their names; then there is nothing left to ask. */
  private void settle() throws SQLException, IOException {
    if (plan.bundles()) {
      store.copyLines(RunFiles.BUNDLES, folder.file(RunFiles.BUNDLE_LINES));
      store.execute("DROP TABLE " + RunFiles.BUNDLES);
    }
    if (plan.database()) {
      store.share(folder.file(DATABASE));
    }
    for (TableDraft table : sink.tables()) {
      table.finish(plan.formats(), plan.database(), folder.file(""));
    }
    store.close();
    RunFiles.delete(folder.file(WORKING), folder.file(WORKING + ".wal"));
    sink.commit();
    folder.commit();
  }

  private PoolResult.Tables shared() throws SQLException {
    String persons = "count(DISTINCT subject), count(DISTINCT examination)";
    List<Optional<Object>> counts =
        store
            .ask(
                "SELECT %s, (SELECT count(*) FROM %s), count(*) FROM %s"
                    .formatted(persons, FindingsTable.NAME, ExaminationsTable.NAME))
            .get(0);
    return new PoolResult.Tables(
        number(counts, 0), number(counts, 1), number(counts, 2), number(counts, 3));
  }

  /** Counts the examinations of which an eye has more than one row. */
  private long repeated() throws SQLException {
    String sql =
        "SELECT count(DISTINCT examination) FROM (SELECT examination FROM "
            + ExaminationsTable.NAME
            + " GROUP BY examination, eye HAVING count(*) > 1)";
    return number(store.ask(sql).get(0), 0);
  }

  private static long number(List<Optional<Object>> row, int at) {
    return (Long) row.get(at).orElse(0L);
  }
}
