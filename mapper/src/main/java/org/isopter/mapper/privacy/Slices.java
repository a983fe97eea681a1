package org.isopter.mapper.privacy;

import java.sql.SQLException;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.isopter.mapper.store.TableStore;

/**
 * Persons, some thousand at a time: what is put together for each of them lies in memory and on no
 * disk, so that all at once would need more the more there are.
 *
 * @param bounds the persons with whom the slices after the first begin, in their order
 */
record Slices(TableStore store, List<String> bounds) {

  /** Stands in a query for being in the slice. */
  static final String HERE = "{in this slice}";

  /** Rows of the wide table of some ten thousand persons. */
  private static final int ROWS = 60_000;

  /**
   * Returns slices for the persons of a table, which are as large as can be where its rows stand in
   * the order of persons; its groups of rows that hold none of a slice are then not read.
   */
  static Slices of(TableStore store, String table) throws SQLException {
    return of(store, table, ROWS);
  }

  static Slices of(TableStore store, String table, int rows) throws SQLException {
    long all = (Long) store.ask("SELECT count(*) FROM " + table).get(0).get(0).orElse(0L);
    if (all < rows) {
      return new Slices(store, List.of());
    }
    String sql =
        "SELECT DISTINCT subject FROM (SELECT subject, row_number() OVER () AS place FROM %s)"
            + " WHERE place %% %d = 0 ORDER BY subject";
    List<String> bounds = new ArrayList<>();
    for (List<Optional<Object>> row : store.ask(sql.formatted(table, rows))) {
      row.get(0).ifPresent(subject -> bounds.add((String) subject));
    }
    return new Slices(store, List.copyOf(bounds));
  }

  /** Makes a table of what a query gives for the persons of each slice in turn. */
  void fill(String table, String query) throws SQLException {
    for (int slice = 0; slice <= bounds.size(); slice++) {
      String some = query.replace(HERE, here(slice));
      store.execute(
          slice == 0
              ? "CREATE OR REPLACE TEMP TABLE %s AS %s".formatted(table, some)
              : "INSERT INTO %s %s".formatted(table, some));
    }
  }

  private String here(int slice) {
    List<String> here = new ArrayList<>();
    if (slice > 0) {
      here.add("subject >= " + TableStore.text(bounds.get(slice - 1)));
    }
    if (slice < bounds.size()) {
      here.add("subject < " + TableStore.text(bounds.get(slice)));
    }
    return here.isEmpty() ? "TRUE" : String.join(" AND ", here);
  }
}
