package org.isopter.mapper.foreign.run;

import java.util.List;
import org.isopter.model.value.Fault;

/** Takes what was read, piece by piece. */
public interface Receiver {

  /** Takes why a document is none that can be read. */
  void refused(Origin origin, List<Fault> faults);

  /** Takes a mistake in the program at a document; its message may hold patient data. */
  void failed(Origin origin, RuntimeException mistake);

  /**
   * Takes that a resource is left out, since the export says that it was deleted.
   *
   * @param name its type and its id
   */
  void deleted(Origin origin, String name);

  /** Takes documents that were read together. */
  void read(Batch batch);
}
