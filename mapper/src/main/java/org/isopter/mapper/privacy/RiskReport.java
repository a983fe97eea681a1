package org.isopter.mapper.privacy;

import java.nio.file.Path;
import java.sql.SQLException;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.isopter.mapper.store.TableFormat;
import org.isopter.mapper.store.TableStore;
import org.isopter.mapper.table.ExaminationsTable;
import org.isopter.mapper.table.Table;

/**
 * How many persons are alike in what they might be known by: k, the persons in the smallest group
 * (Sweeney 2002, doi:10.1142/S0218488502001648), and l, the fewest different courses of a finding
 * within a group (Machanavajjhala and others 2007, doi:10.1145/1217299.1217302). Where all of a
 * group have the same, whoever knows that a person is in the group knows what was found.
 */
public final class RiskReport {

  private static final String TABLE = "risk";

  /** What was found of one finding, by person. */
  private static final String FOUND = "found_in_persons";

  /** The file of it. */
  public static final String FILE = "risk.csv";

  /** What it calls the visits of a person and how far apart they are. */
  public static final String VISITS = Traits.VISITS;

  /** What it calls the numbers of all refractions of a person. */
  public static final String REFRACTION = Traits.REFRACTION;

  /** Findings that a person may not want known, for which l is given. */
  public static final List<String> SENSITIVE =
      List.of("afferent-defect", "disc-margin", "vertical-cup-disc-ratio");

  private final TableStore store;
  private final Slices slices;
  private final int smallest;

  private RiskReport(TableStore store, Slices slices, int smallest) {
    this.store = store;
    this.slices = slices;
    this.smallest = smallest;
  }

  /**
   * Writes the report as CSV and returns k for the chosen columns; 0 where there is no person.
   *
   * @param columns the columns of the wide table that were chosen
   * @param smallest the fewest persons that a group should have
   * @throws SQLException when the database refuses it, for instance for a full disk
   */
  public static long write(
      TableStore store, List<String> columns, int smallest, Table<?> eyes, Path to)
      throws SQLException {
    Slices slices = Slices.of(store, ExaminationsTable.NAME);
    Traits.tabulate(slices, columns, eyes);
    store.execute(
        "CREATE TABLE %s (measure VARCHAR, traits VARCHAR, finding VARCHAR, least BIGINT,"
                .formatted(TABLE)
            + " \"groups\" BIGINT, persons BIGINT, persons_in_small_groups BIGINT)");
    RiskReport report = new RiskReport(store, slices, smallest);
    List<String> chosen = List.of(Traits.chosenColumn());
    report.groups(columns, chosen);
    for (String finding : SENSITIVE) {
      report.diversity(String.join(" ", columns), chosen, finding);
    }
    store.copy(TABLE, TableFormat.CSV, to);
    return report.least(String.join(" ", columns));
  }

  /** Returns the columns of the wide table that hold a number of a refraction. */
  public static List<String> refraction(Table<?> eyes) {
    return Traits.refractionNumbers(eyes);
  }

  private void groups(List<String> columns, List<String> chosen) throws SQLException {
    if (columns.size() > 1) {
      for (String column : columns) {
        alike(column, List.of(TableStore.name(column)));
      }
    }
    String all = String.join(" ", columns);
    alike(all, chosen);
    List<String> beside = beside(columns);
    if (!beside.isEmpty()) {
      alike(all + " " + String.join(" ", beside), with(chosen, Traits.besideColumn()));
    }
    alike(Traits.VISITS, List.of(Traits.visitsColumn()));
    alike(Traits.REFRACTION, List.of(Traits.refractionColumn()));
    List<String> every = with(chosen, Traits.visitsColumn(), Traits.refractionColumn());
    if (!beside.isEmpty()) {
      every.add(Traits.besideColumn());
      all = all + " " + String.join(" ", beside);
    }
    alike(all + " " + Traits.VISITS + " " + Traits.REFRACTION, every);
  }

  /** Returns the columns by which a pool that holds them tells persons apart further. */
  private List<String> beside(List<String> columns) throws SQLException {
    List<String> filled = new ArrayList<>();
    for (String column : Traits.BESIDE) {
      String sql =
          "SELECT count(%s) FROM %s".formatted(TableStore.name(column), ExaminationsTable.NAME);
      if (!columns.contains(column) && !store.ask(sql).get(0).get(0).equals(Optional.of(0L))) {
        filled.add(column);
      }
    }
    return filled;
  }

  private static List<String> with(List<String> columns, String... more) {
    List<String> all = new ArrayList<>(columns);
    all.addAll(List.of(more));
    return all;
  }

  private void alike(String traits, List<String> columns) throws SQLException {
    store.execute(
        """
        INSERT INTO %s SELECT 'k', %s, NULL, coalesce(min(n), 0), count(*), coalesce(sum(n), 0),
          coalesce(sum(n) FILTER (WHERE n < %d), 0)
        FROM (SELECT count(*) AS n FROM %s GROUP BY %s)"""
            .formatted(
                TABLE,
                TableStore.text(traits),
                smallest,
                Traits.TABLE,
                String.join(", ", columns)));
  }

  private void diversity(String traits, List<String> columns, String finding) throws SQLException {
    slices.fill(
        FOUND,
        """
        SELECT subject, md5_number(list_sort(list(DISTINCT value))::VARCHAR) AS found
        FROM findings WHERE finding = %s AND %s GROUP BY subject"""
            .formatted(TableStore.text(finding), Slices.HERE));
    store.execute(
        """
        INSERT INTO %s SELECT 'l', %s, %s, coalesce(min(l), 0), count(*),
          coalesce(sum(n), 0), coalesce(sum(n) FILTER (WHERE l < 2), 0)
        FROM (SELECT count(*) AS n, count(DISTINCT coalesce(found, 0)) AS l
          FROM %s LEFT JOIN %s USING (subject) GROUP BY %s)"""
            .formatted(
                TABLE,
                TableStore.text(traits),
                TableStore.text(finding),
                Traits.TABLE,
                FOUND,
                String.join(", ", columns)));
  }

  private long least(String traits) throws SQLException {
    Optional<Object> least =
        store
            .ask(
                "SELECT least FROM %s WHERE measure = 'k' AND traits = %s"
                    .formatted(TABLE, TableStore.text(traits)))
            .get(0)
            .get(0);
    return (Long) least.orElse(0L);
  }
}
