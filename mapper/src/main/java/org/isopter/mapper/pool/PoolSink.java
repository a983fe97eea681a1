package org.isopter.mapper.pool;

import java.io.IOException;
import java.nio.file.Path;
import java.sql.SQLException;
import java.util.List;
import java.util.Optional;
import org.isopter.mapper.store.Appender;
import org.isopter.mapper.store.TableStore;
import org.isopter.mapper.table.ExaminationsTable;
import org.isopter.mapper.table.FindingsTable;

/** Puts what was made of batches into the tables and files, and counts it. */
final class PoolSink implements AutoCloseable {

  private final Appender findings;
  private final Appender eyes;
  private final Appender steps;
  private final RunFiles files;
  private PoolCounts counts = PoolCounts.NONE;
  private long findingRows;
  private long eyeRows;

  PoolSink(Appender findings, Appender eyes, Appender steps, RunFiles files) {
    this.findings = findings;
    this.eyes = eyes;
    this.steps = steps;
    this.files = files;
  }

  void add(List<ExamRows> exams) throws SQLException, IOException {
    for (ExamRows exam : exams) {
      findingRows += fill(findings, exam.findings());
      eyeRows += fill(eyes, exam.eyes());
      fill(steps, exam.steps());
      files.bundle(exam.bundle());
      files.origin(exam);
    }
  }

  /** Puts down what a batch left over, and counts the batch. */
  void leave(Batch batch) throws IOException {
    for (Remainder left : batch.left()) {
      files.left(left);
    }
    counts = counts.plus(batch.counts());
  }

  private static int fill(Appender filler, List<List<Optional<?>>> rows) throws SQLException {
    for (List<Optional<?>> row : rows) {
      filler.add(row);
    }
    return rows.size();
  }

  /** Counts what an older pool holds too, once its rows are in the tables. */
  void resume(PoolCounts before, Path left, TableStore store) throws SQLException, IOException {
    counts = counts.plus(before);
    findingRows += store.count(FindingsTable.NAME);
    eyeRows += store.count(ExaminationsTable.NAME);
    files.leftBefore(left);
  }

  PoolCounts counts() {
    return counts;
  }

  PoolResult result(PoolResult.Risk risk, PoolResult.Aside aside) {
    return new PoolResult(counts, findingRows, eyeRows, risk, aside);
  }

  /** Gives the files that lie elsewhere their names. */
  void commit() throws IOException {
    files.commit();
  }

  /** Takes away what lies elsewhere and was not finished. */
  void discard() throws IOException {
    files.discard();
  }

  /** Completes the tables and the files; to do it again does nothing. */
  @Override
  public void close() throws SQLException, IOException {
    try (files;
        findings;
        steps) {
      eyes.close();
    }
  }
}
