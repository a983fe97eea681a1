package org.isopter.mapper.pool;

import java.util.List;
import java.util.Optional;

/**
 * What one document becomes.
 *
 * @param findings the cells of its rows of the long table
 * @param eyes the cells of its rows of the wide table
 * @param steps the cells of its rows of the usual steps
 * @param left what was left over of it, a line of JSON each
 * @param counts how much of it there was
 */
public record DocumentRows(
    List<List<Optional<?>>> findings,
    List<List<Optional<?>>> eyes,
    List<List<Optional<?>>> steps,
    List<String> left,
    PoolCounts counts) {

  public DocumentRows {
    findings = List.copyOf(findings);
    eyes = List.copyOf(eyes);
    steps = List.copyOf(steps);
    left = List.copyOf(left);
  }
}
