package org.isopter.mapper.privacy;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.sql.SQLException;
import org.isopter.mapper.store.TableStore;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Persons in slices: each is in one, whole, in whatever order the rows stand. */
class SlicesTest {

  @ParameterizedTest
  @CsvSource({"subject, 1", "subject, 7", "subject, 100000", "hash(i), 7", "subject DESC, 40"})
  void whatIsMadeInSlicesIsWhatIsMadeAtOnce(String order, int rows) throws SQLException {
    try (TableStore store = TableStore.inMemory()) {
      store.execute(
          "CREATE TABLE eyes AS SELECT 'o''' || (i // 3) AS subject, i AS row FROM range(900) r(i)"
              + " ORDER BY "
              + order);
      String query = "SELECT subject, count(*) AS n, sum(row) AS s FROM eyes WHERE %s GROUP BY ALL";
      Slices.of(store, "eyes", rows).fill("sliced", query.formatted(Slices.HERE));
      store.execute("CREATE TABLE whole AS " + query.formatted("TRUE"));
      assertEquals(300L, number(store, "SELECT count(*) FROM sliced"));
      assertEquals(0L, number(store, "SELECT count(*) FROM (FROM whole EXCEPT FROM sliced)"));
    }
  }

  private static Object number(TableStore store, String sql) throws SQLException {
    return store.ask(sql).get(0).get(0).orElseThrow();
  }
}
