package org.isopter.task.convert;

import org.isopter.mapper.foreign.run.Batch;
import org.isopter.mapper.foreign.run.Judged;
import org.isopter.mapper.io.UnwritableException;

/** Where records go that were read from FHIR, and what goes along with them. */
public interface RecordOutput extends AutoCloseable {

  /**
   * Puts what a policy let pass of a batch.
   *
   * @throws UnwritableException when it cannot be written
   */
  void put(Batch batch, Judged judged);

  /** Ends the output: from here on it is complete. */
  void commit();

  /** Returns what to tell of where it went; empty where the output itself shows it. */
  String where();

  @Override
  void close();
}
