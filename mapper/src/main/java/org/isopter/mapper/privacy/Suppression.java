package org.isopter.mapper.privacy;

import java.sql.SQLException;
import java.util.List;
import java.util.OptionalLong;
import org.isopter.mapper.store.TableDraft;
import org.isopter.mapper.store.TableStore;
import org.isopter.mapper.table.ExaminationsTable;
import org.isopter.mapper.table.FindingsTable;
import org.isopter.mapper.table.StepsTable;
import org.isopter.mapper.table.Table;

/**
 * Makes tables k-anonymous for chosen columns: ages become bands, as wide as needed, and persons
 * who still share their traits with too few are taken out with all their rows. Before them those
 * are whose visits fill the {@link StudyPeriod}.
 */
public final class Suppression {

  /** Bands of ages in years, tried in this order; 1 leaves ages as they are. */
  private static final List<Integer> BANDS = List.of(1, 5, 10, 20);

  /** A band is wide enough when fewer than one person in so many is taken out. */
  private static final int ONE_IN = 20;

  /**
   * What was done to the tables.
   *
   * @param persons the persons who were taken out
   * @param examinations their examinations
   * @param band how many years of age are one; 1 where ages are as they were
   */
  public record Taken(long persons, long examinations, int band) {

    /** Nothing. */
    public static final Taken NOTHING = new Taken(0, 0, 1);
  }

  private static final String AGE = "age";

  /** All from this age on are one. */
  private static final int OLDEST = 90;

  private final TableStore store;
  private final List<String> columns;
  private final int smallest;
  private final Table<?> eyes;
  private final OptionalLong longest;
  private String bands = "";
  private int band = 1;

  private Suppression(
      TableStore store, List<String> columns, int smallest, Table<?> eyes, OptionalLong longest) {
    this.store = store;
    this.columns = columns;
    this.smallest = smallest;
    this.eyes = eyes;
    this.longest = longest;
  }

  /**
   * Makes the views of the tables show the others alone, and returns what was taken out.
   *
   * @param longest the most days that a course of visits may span
   * @throws SQLException when the database refuses it, for instance for a full disk
   */
  public static Taken apply(
      TableStore store, List<String> columns, int smallest, Table<?> eyes, OptionalLong longest)
      throws SQLException {
    return new Suppression(store, columns, smallest, eyes, longest).apply();
  }

  private Taken apply() throws SQLException {
    takeOutLongest();
    Slices slices = Slices.of(store, ExaminationsTable.NAME);
    Traits.tabulate(slices, columns, eyes);
    long persons = number("SELECT count(*) FROM " + Traits.TABLE);
    for (int years : columns.contains(AGE) ? BANDS : BANDS.subList(0, 1)) {
      round(years);
      Traits.tabulate(slices, columns, eyes);
      if (number("SELECT count(*) FROM (" + few() + ")") * ONE_IN < persons) {
        break;
      }
    }
    return takeOut();
  }

  private void round(int years) throws SQLException {
    if (years > 1) {
      band = years;
      bands =
          " REPLACE (CASE WHEN age < %2$d THEN age // %1$d * %1$d ELSE age END AS age)"
              .formatted(band, OLDEST);
      show(ExaminationsTable.NAME, bands);
    }
  }

  private void takeOutLongest() throws SQLException {
    store.execute(
        "CREATE OR REPLACE TEMP TABLE taken_out AS "
            + StudyPeriod.courses(longest.orElse(Long.MAX_VALUE)));
    show(FindingsTable.NAME, "");
    show(ExaminationsTable.NAME, "");
    show(StepsTable.NAME, "");
  }

  /** A person is in one group only: to take a group out makes no other smaller. */
  private Taken takeOut() throws SQLException {
    store.execute("INSERT INTO taken_out " + few());
    String examinations =
        "SELECT count(DISTINCT examination) FROM %s WHERE subject IN (FROM taken_out)";
    return new Taken(
        number("SELECT count(*) FROM taken_out"),
        number(examinations.formatted(TableDraft.ALL + ExaminationsTable.NAME)),
        band);
  }

  private void show(String table, String instead) throws SQLException {
    String others = " WHERE subject NOT IN (FROM taken_out)";
    store.view(table, "SELECT *" + instead + " FROM " + TableDraft.ALL + table + others);
  }

  private String few() {
    return "SELECT subject FROM (SELECT subject, count(*) OVER (PARTITION BY %s) AS n FROM %s) WHERE n < %d"
        .formatted(Traits.chosenColumn(), Traits.TABLE, smallest);
  }

  private long number(String sql) throws SQLException {
    return (Long) store.ask(sql).get(0).get(0).orElse(0L);
  }
}
