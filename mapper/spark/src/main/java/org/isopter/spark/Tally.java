package org.isopter.spark;

import java.io.Serializable;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.apache.spark.sql.Row;
import org.isopter.mapper.store.CodebookRow;
import org.isopter.mapper.table.Column;
import org.isopter.mapper.table.Kind;
import org.isopter.mapper.table.Table;
import org.jspecify.annotations.Nullable;

/**
 * Counts what the cells of a table hold, on whichever machines its rows are: how many are filled,
 * and the least and the greatest number.
 */
final class Tally implements Serializable {

  private static final long serialVersionUID = 1;

  private final long[] filled;
  private final @Nullable Number[] least;
  private final @Nullable Number[] most;

  Tally(int columns) {
    this.filled = new long[columns];
    this.least = new Number[columns];
    this.most = new Number[columns];
  }

  /** Counts a row too. */
  Tally add(Row row) {
    for (int i = 0; i < filled.length; i++) {
      if (!row.isNullAt(i)) {
        filled[i]++;
        if (row.get(i) instanceof Number number) {
          take(i, number, number);
        }
      }
    }
    return this;
  }

  /** Counts what another has counted too. */
  Tally add(Tally other) {
    for (int i = 0; i < filled.length; i++) {
      filled[i] += other.filled[i];
      Number low = other.least[i];
      Number high = other.most[i];
      if (low != null && high != null) {
        take(i, low, high);
      }
    }
    return this;
  }

  private void take(int column, Number low, Number high) {
    Number least = this.least[column];
    Number most = this.most[column];
    this.least[column] = least == null || low.doubleValue() < least.doubleValue() ? low : least;
    this.most[column] = most == null || high.doubleValue() > most.doubleValue() ? high : most;
  }

  /** Returns what the codebook says of each column. */
  List<CodebookRow> rows(Table<?> table) {
    List<CodebookRow> rows = new ArrayList<>();
    for (int i = 0; i < filled.length; i++) {
      Column<?> column = table.columns().get(i);
      boolean ordered = column.kind() == Kind.NUMBER || column.kind() == Kind.INTEGER;
      rows.add(
          new CodebookRow(
              table.name(), column, filled[i], text(ordered, least[i]), text(ordered, most[i])));
    }
    return rows;
  }

  private static Optional<String> text(boolean ordered, @Nullable Number number) {
    return ordered ? Optional.ofNullable(number).map(Number::toString) : Optional.empty();
  }
}
