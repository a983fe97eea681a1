package org.isopter.mapper.pool;

import java.util.List;
import org.isopter.mapper.table.PooledExam;

/**
 * What came of documents.
 *
 * @param exams the examinations that were read, in the order of the documents
 * @param left what was left over
 * @param flawed the examinations with errors, whether they were read or left over
 * @param counts how many there were
 */
public record PoolBatch(
    List<PooledExam> exams, List<Remainder> left, List<Flawed> flawed, PoolCounts counts) {
  public PoolBatch {
    exams = List.copyOf(exams);
    left = List.copyOf(left);
    flawed = List.copyOf(flawed);
  }
}
