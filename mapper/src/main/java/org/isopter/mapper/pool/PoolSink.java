package org.isopter.mapper.pool;

import java.io.IOException;
import java.nio.file.Path;
import java.sql.SQLException;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import org.isopter.mapper.store.PackedRows;
import org.isopter.mapper.store.TableDraft;
import org.isopter.mapper.store.TableStore;
import org.isopter.mapper.table.Column;
import org.isopter.mapper.table.EyeRow;
import org.isopter.mapper.table.FindingRow;
import org.isopter.mapper.table.FindingsTable;
import org.isopter.mapper.table.StepRow;
import org.isopter.mapper.table.StepsTable;
import org.isopter.mapper.table.Table;

/** Puts what was made of batches into the tables and files, and counts it. */
final class PoolSink implements AutoCloseable {

  private final TableDraft findings;
  private final TableDraft eyes;
  private final TableDraft steps;
  private final RunFiles files;
  private final List<String> columns;
  private PoolCounts counts = PoolCounts.NONE;

  private PoolSink(PoolFolder folder, PoolPlan plan, TableStore store, Table<EyeRow> wide)
      throws SQLException, IOException {
    Table<FindingRow> values = FindingsTable.table();
    Table<StepRow> usual = StepsTable.table();
    Path drafts = folder.file("");
    this.findings = TableDraft.begin(values, store, drafts);
    this.eyes = TableDraft.begin(wide, store, drafts);
    this.steps = TableDraft.begin(usual, store, drafts);
    this.files = RunFiles.open(folder, plan, store);
    this.columns = Stream.of(values, wide, usual).map(PoolSink::names).toList();
  }

  /** Begins tables and files in the folder of a run. */
  static PoolSink begin(PoolFolder folder, PoolPlan plan, TableStore store, Table<EyeRow> wide)
      throws SQLException, IOException {
    return new PoolSink(folder, plan, store, wide);
  }

  private static String names(Table<?> table) {
    return table.columns().stream().<String>map(Column::name).toList().toString();
  }

  /** Returns the names of the columns of each table. */
  List<String> columns() {
    return columns;
  }

  /** An examination whose rows are packed for each table, where it has any there. */
  record Packed(
      ExamRows exam,
      Optional<PackedRows> findings,
      Optional<PackedRows> eyes,
      Optional<PackedRows> steps) {}

  /** Packs the rows of an examination; several threads may do so at once. */
  Packed pack(ExamRows exam) {
    return new Packed(
        exam, findings.pack(exam.findings()), eyes.pack(exam.eyes()), steps.pack(exam.steps()));
  }

  void add(List<Packed> exams) throws SQLException, IOException {
    for (Packed packed : exams) {
      add(findings, packed.findings());
      add(eyes, packed.eyes());
      add(steps, packed.steps());
      files.bundle(packed.exam().bundle());
      files.origin(packed.exam());
    }
  }

  private static void add(TableDraft table, Optional<PackedRows> rows) throws IOException {
    if (rows.isPresent()) {
      table.add(rows.get());
    }
  }

  /** Puts down what a batch left over, and counts the batch. */
  void leave(PoolBatch batch) throws IOException {
    for (Remainder left : batch.left()) {
      files.left(left);
    }
    counts = counts.plus(batch.counts());
  }

  /** Takes over what an older pool holds. */
  void resume(TableStore store, PoolCounts before, Path older) throws SQLException, IOException {
    for (TableDraft table : tables()) {
      table.addOlder(older);
    }
    counts = counts.plus(before);
    files.bundlesBefore(store, older.resolve(RunFiles.BUNDLE_LINES));
    files.leftBefore(older.resolve(RunFiles.LEFT));
  }

  List<TableDraft> tables() {
    return List.of(findings, eyes, steps);
  }

  PoolCounts counts() {
    return counts;
  }

  /** Gives the files that lie elsewhere their names. */
  void commit() throws IOException {
    files.commit();
  }

  /** Takes away what lies elsewhere and was not finished. */
  void discard() throws IOException {
    files.discard();
  }

  /** Completes the files beside the tables, and writes the tables down. */
  void complete() throws SQLException, IOException {
    files.close();
    for (TableDraft table : tables()) {
      table.write();
    }
  }

  /** Closes what is open; to do it again does nothing. */
  @Override
  public void close() throws SQLException, IOException {
    try (files;
        findings;
        eyes) {
      steps.close();
    }
  }
}
