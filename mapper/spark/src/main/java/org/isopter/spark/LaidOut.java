package org.isopter.spark;

import java.io.Serializable;
import java.util.List;
import java.util.Optional;
import org.apache.spark.sql.Row;
import org.apache.spark.sql.RowFactory;
import org.isopter.mapper.pool.DocumentRows;

/**
 * What one document became, as it waits between the machines.
 *
 * @param findings its rows of the long table
 * @param eyes its rows of the wide table
 * @param steps its rows of the usual steps
 * @param left what was left over of it, a line of JSON each
 * @param totals how much of it there was
 */
record LaidOut(
    List<Row> findings, List<Row> eyes, List<Row> steps, List<String> left, Totals totals)
    implements Serializable {

  LaidOut {
    findings = List.copyOf(findings);
    eyes = List.copyOf(eyes);
    steps = List.copyOf(steps);
    left = List.copyOf(left);
  }

  static LaidOut of(DocumentRows rows) {
    return new LaidOut(
        rows.findings().stream().map(LaidOut::row).toList(),
        rows.eyes().stream().map(LaidOut::row).toList(),
        rows.steps().stream().map(LaidOut::row).toList(),
        rows.left(),
        Totals.of(rows));
  }

  private static Row row(List<Optional<?>> cells) {
    Object[] values = new Object[cells.size()];
    for (int i = 0; i < values.length; i++) {
      Optional<?> cell = cells.get(i);
      if (cell.isPresent()) {
        values[i] = cell.get();
      }
    }
    return RowFactory.create(values);
  }
}
