package org.isopter.mapper.privacy;

import java.nio.file.Path;
import java.sql.SQLException;
import java.util.List;
import java.util.Optional;
import org.isopter.mapper.store.TableFormat;
import org.isopter.mapper.store.TableStore;
import org.isopter.mapper.table.Column;
import org.isopter.mapper.table.ExaminationsTable;
import org.isopter.mapper.table.Table;
import org.isopter.model.value.Fault;
import org.isopter.model.value.FaultException;

/**
 * The groups of persons who share their traits with too few others (k-anonymity, Sweeney 2002,
 * doi:10.1142/S0218488502001648).
 */
public final class SmallCells {

  private SmallCells() {}

  /**
   * Checks that the traits are columns.
   *
   * @throws FaultException when one is not
   */
  public static void check(List<String> traits, Table<?> table) {
    List<String> names = table.columns().stream().<String>map(Column::name).toList();
    for (String trait : traits) {
      if (!names.contains(trait)) {
        throw new FaultException(
            new Fault(
                "traits",
                "\"" + trait + "\"",
                "a column of the table " + table.name(),
                "take names from the codebook, for instance age, sex, setting"));
      }
    }
  }

  /**
   * Writes the groups of fewer persons than the smallest, and returns how many there are.
   *
   * @throws SQLException when the database refuses it, for instance for a full disk
   */
  public static long write(TableStore store, List<String> columns, int smallest, Path to)
      throws SQLException {
    String traits = String.join(", ", columns.stream().map(TableStore::name).toList());
    store.execute(
        "CREATE TABLE small_cells AS SELECT %s, count(DISTINCT subject) AS persons FROM %s GROUP BY %s HAVING count(DISTINCT subject) < %d ORDER BY ALL"
            .formatted(traits, ExaminationsTable.NAME, traits, smallest));
    store.copy("small_cells", TableFormat.CSV, to);
    Optional<Object> count = store.ask("SELECT count(*) FROM small_cells").get(0).get(0);
    return (Long) count.orElse(0L);
  }
}
