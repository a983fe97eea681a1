package org.isopter.mapper.privacy;

import java.sql.SQLException;
import java.util.ArrayList;
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

  /** What is in a pool only where it is asked for, and tells persons apart where it is. */
  static final List<String> BESIDE = List.of("person_group", "site", "examiner");

  /** The chosen columns, all of a row. */
  private static final String CHOSEN = "chosen";

  private Traits() {}

  /**
   * Makes the table: of each column the different values of a person, in their order, and of all
   * columns together those that stand in one row. Who was young at the bedside and old in the
   * clinic is not like who was old at the bedside and young in the clinic.
   *
   * <p>Only whether two persons are alike is asked of it, so that it holds a number of 128 bits for
   * each of these; what that number stands for is put together for some thousand persons at a time.
   */
  static void tabulate(Slices slices, List<String> columns, Table<?> eyes) throws SQLException {
    List<String> cells = new ArrayList<>();
    for (String column : columns) {
      String name = TableStore.name(column);
      cells.add(number("list_sort(list(DISTINCT %s))::VARCHAR".formatted(name)) + " AS " + name);
    }
    cells.add(number(rows(columns)) + " AS " + chosenColumn());
    cells.add(number(visits()) + " AS " + visitsColumn());
    cells.add(number(refraction(eyes)) + " AS " + refractionColumn());
    cells.add(number(rows(BESIDE)) + " AS " + besideColumn());
    slices.fill(
        TABLE,
        "SELECT subject, %s FROM %s WHERE %s GROUP BY subject"
            .formatted(String.join(", ", cells), ExaminationsTable.NAME, Slices.HERE));
  }

  private static String number(String text) {
    return "md5_number(" + text + ")";
  }

  /** Returns the column of what stands together in the rows of a person. */
  static String chosenColumn() {
    return TableStore.name("all " + CHOSEN);
  }

  /** Returns the column of what is in a pool only where it is asked for. */
  static String besideColumn() {
    return TableStore.name("all beside");
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
    return rows(refractionNumbers(eyes));
  }

  /** Returns the different rows of some columns. */
  private static String rows(List<String> columns) {
    String cells =
        columns.stream()
            .map(TableStore::name)
            .map(name -> name + "::VARCHAR")
            .collect(Collectors.joining(", "));
    return "list_sort(list(DISTINCT [%s]::VARCHAR))::VARCHAR".formatted(cells);
  }

  static List<String> refractionNumbers(Table<?> eyes) {
    return eyes.columns().stream()
        .filter(column -> column.kind() == Kind.NUMBER)
        .<String>map(Column::name)
        .filter(name -> name.startsWith(REFRACTION))
        .toList();
  }
}
