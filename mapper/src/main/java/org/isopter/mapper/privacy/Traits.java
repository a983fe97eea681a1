package org.isopter.mapper.privacy;

import java.sql.SQLException;
import java.util.List;
import java.util.stream.Collectors;
import org.isopter.mapper.store.TableStore;
import org.isopter.mapper.table.Column;
import org.isopter.mapper.table.ExaminationsTable;
import org.isopter.mapper.table.Kind;
import org.isopter.mapper.table.Table;

/** What a person might be known by, as a table with one row for each person. */
final class Traits {

  static final String TABLE = "traits_of_persons";

  /** How many visits there were and how far apart, which is one person's alone as a rule. */
  static final String VISITS = "visits";

  /** All numbers of all refractions: they are on prescriptions, and hardly change. */
  static final String REFRACTION = "refraction";

  private Traits() {}

  /** Makes the table: of each column the different values of a person, in their order. */
  static void tabulate(TableStore store, List<String> columns, Table<?> eyes) throws SQLException {
    String chosen =
        columns.stream()
            .map(TableStore::name)
            .map(name -> "list_sort(list(DISTINCT %s))::VARCHAR AS %s".formatted(name, name))
            .collect(Collectors.joining(", "));
    store.execute(
        """
        CREATE OR REPLACE TEMP TABLE %s AS
        SELECT subject, %s, %s AS "%s", %s AS "%s" FROM %s GROUP BY subject"""
            .formatted(
                TABLE,
                chosen,
                visits(),
                "all " + VISITS,
                refraction(eyes),
                "all " + REFRACTION,
                ExaminationsTable.NAME));
  }

  static String visitsColumn() {
    return TableStore.name("all " + VISITS);
  }

  static String refractionColumn() {
    return TableStore.name("all " + REFRACTION);
  }

  private static String visits() {
    return "list_transform(list_sort(list(DISTINCT \"time\")),"
        + " moment -> date_diff('day', min(\"time\"), moment))::VARCHAR";
  }

  private static String refraction(Table<?> eyes) {
    String numbers =
        refractionNumbers(eyes).stream().map(TableStore::name).collect(Collectors.joining(", "));
    return "list_sort(list(DISTINCT [%s]::VARCHAR))::VARCHAR".formatted(numbers);
  }

  static List<String> refractionNumbers(Table<?> eyes) {
    return eyes.columns().stream()
        .filter(column -> column.kind() == Kind.NUMBER)
        .<String>map(Column::name)
        .filter(name -> name.startsWith(REFRACTION))
        .toList();
  }
}
