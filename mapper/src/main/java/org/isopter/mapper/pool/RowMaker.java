package org.isopter.mapper.pool;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.isopter.mapper.privacy.Deidentifier;
import org.isopter.mapper.table.ExaminationsTable;
import org.isopter.mapper.table.FindingsTable;
import org.isopter.mapper.table.PooledExam;
import org.isopter.mapper.table.StepsTable;
import org.isopter.model.catalogue.Catalogue;

/**
 * Makes the rows of a document by itself: what a {@link PoolRun} does, without a place to put them.
 * The same document gives the same rows, whenever and on whichever machine.
 *
 * <p>A bare resource is refused, for it would have to be read together with others of its person.
 *
 * <p>Safe for use by several threads at once.
 */
public final class RowMaker {

  private final PoolReader reader;
  private final ExamRows.Maker maker;
  private final boolean identified;

  /**
   * Makes one.
   *
   * @param deidentifier takes the identities out; empty where they are to stay
   */
  public RowMaker(Catalogue catalogue, PoolReader reader, Optional<Deidentifier> deidentifier) {
    this.reader = deidentifier.isPresent() ? reader.refusingPools() : reader;
    this.maker =
        new ExamRows.Maker(
            FindingsTable.table(),
            ExaminationsTable.table(catalogue),
            StepsTable.table(),
            deidentifier,
            Optional.empty(),
            Optional.empty());
    this.identified = deidentifier.isEmpty();
  }

  /** Returns what a document becomes. */
  public DocumentRows of(PoolDocument document) {
    PoolBatch batch = reader.alone(document);
    List<List<Optional<?>>> findings = new ArrayList<>();
    List<List<Optional<?>>> eyes = new ArrayList<>();
    List<List<Optional<?>>> steps = new ArrayList<>();
    for (PooledExam exam : batch.exams()) {
      ExamRows rows = maker.of(exam);
      rows.findings().forEach(row -> findings.add(row.cells(maker.findings().columns().size())));
      rows.eyes().forEach(row -> eyes.add(row.cells(maker.eyes().columns().size())));
      rows.steps().forEach(row -> steps.add(row.cells(maker.steps().columns().size())));
    }
    List<String> left =
        batch.left().stream().map(one -> RemainderLine.of(one, identified)).toList();
    return new DocumentRows(findings, eyes, steps, left, batch.counts());
  }
}
