package org.isopter.mapper.foreign.run;

import java.nio.file.Path;
import java.util.Optional;

/**
 * What a run over lines writes.
 *
 * @param records the records, one a line
 * @param carried what goes along with each, see {@link CarriedLine}
 * @param report an OperationOutcome for each resource and for each line that cannot be read
 */
public record NdjsonFiles(Path records, Path carried, Optional<Path> report) {

  /** Returns records with what goes along beside them, and no report. */
  public static NdjsonFiles of(Path records) {
    return new NdjsonFiles(records, CarriedFile.beside(records), Optional.empty());
  }

  /** Returns these files with a report. */
  public NdjsonFiles report(Path file) {
    return new NdjsonFiles(records, carried, Optional.of(file));
  }
}
