package org.isopter.mapper.person;

import java.nio.file.Path;
import java.sql.SQLException;
import java.time.DateTimeException;
import java.time.LocalDate;
import java.time.Month;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import org.isopter.mapper.store.PoolTables;
import org.isopter.mapper.store.TableStore;
import org.isopter.mapper.table.Person;
import org.isopter.mapper.table.PooledExam;
import org.isopter.model.exam.Header;
import org.isopter.model.exam.Identifier;
import org.isopter.model.value.Fault;
import org.isopter.model.value.FaultException;

/**
 * What a study knows of its persons, from a CSV file with a row for each: {@code id}, and of {@code
 * system}, {@code birth_year}, {@code birth_date}, {@code sex} and {@code group} what there is.
 *
 * <p>A row is of the person whose identifier and system are the same; where the file has no column
 * {@code system}, of the one with that identifier, whatever its system. What the file says comes
 * before what a Patient resource says. A year alone is taken for its middle.
 *
 * <p>For one thread.
 */
public final class PersonsFile {

  private static final Set<String> SEXES = Set.of("male", "female", "other", "unknown");

  private static final List<String> COLUMNS =
      List.of("id", "system", "birth_year", "birth_date", "sex", "group");

  /** A longer word for a group would be a remark, which may name anyone. */
  private static final int LONGEST_GROUP = 40;

  private record Row(Optional<LocalDate> born, Optional<String> sex, Optional<String> group) {}

  private final Map<String, Row> rows = new HashMap<>();
  private final Set<String> met = new HashSet<>();
  private final boolean bySystem;

  private PersonsFile(boolean bySystem) {
    this.bySystem = bySystem;
  }

  /**
   * Reads a file.
   *
   * @throws FaultException when it cannot be read, a column is none of those above, a cell cannot
   *     be understood, or a person has two rows; no message shows what a cell holds
   */
  public static PersonsFile read(Path path) {
    try (TableStore store = TableStore.inMemory()) {
      PoolTables.Rows table =
          store.rows(
              "FROM read_csv(%s, header = true, all_varchar = true)"
                  .formatted(TableStore.text(path.toString())));
      return of(path.toString(), table);
    } catch (SQLException unreadable) {
      throw unreadable(path);
    }
  }

  /** What the database says of a file may show what is in it. */
  private static FaultException unreadable(Path path) {
    String wanted = "a CSV file in UTF-8 with a heading, and a row for each person";
    return new FaultException(
        Fault.of(path.toString(), "what is no table, or could not be read", wanted));
  }

  private static PersonsFile of(String path, PoolTables.Rows table) {
    List<String> unknown = new ArrayList<>(table.columns());
    unknown.removeAll(COLUMNS);
    if (!unknown.isEmpty() || !table.columns().contains("id")) {
      throw new FaultException(
          Fault.of(
              path,
              heading(table.columns(), unknown.size()),
              "id, and of " + COLUMNS.subList(1, COLUMNS.size()) + " any, in lower case"));
    }
    PersonsFile file = new PersonsFile(table.columns().contains("system"));
    for (int i = 0; i < table.cells().size(); i++) {
      Map<String, String> cells = new HashMap<>();
      for (int at = 0; at < table.columns().size(); at++) {
        String column = table.columns().get(at);
        table.cells().get(i).get(at).ifPresent(cell -> cells.put(column, cell.toString().strip()));
      }
      file.add(new Cells(path + " row " + (i + 1), cells));
    }
    return file;
  }

  /** Where there is no heading, the first person stands in its place: nothing else is shown. */
  private static String heading(List<String> columns, int others) {
    List<String> known = columns.stream().filter(COLUMNS::contains).toList();
    return "a heading with "
        + (known.isEmpty() ? "none of the columns" : String.join(", ", known))
        + (others > 0 ? " and " + others + " of other names" : "");
  }

  private void add(Cells cells) {
    String id = cells.find("id").orElseThrow(() -> cells.fault("id", "the person's identifier"));
    Optional<LocalDate> born = cells.born();
    Optional<String> sex = cells.find("sex");
    Optional<String> group = cells.find("group");
    if (sex.isPresent() && !SEXES.contains(sex.get())) {
      throw cells.fault("sex", "male, female, other, unknown or nothing");
    }
    if (group.isPresent() && group.get().length() > LONGEST_GROUP) {
      throw cells.fault("group", "a word of up to " + LONGEST_GROUP + " characters");
    }
    if (id.indexOf('"') >= 0) {
      throw cells.fault("id", "every quotation mark closed, and none within");
    }
    Identifier identifier = new Identifier(cells.find("system"), id);
    if (rows.put(key(identifier), new Row(born, sex, group)) != null) {
      throw new FaultException(
          Fault.of(cells.at(), "a person who has a row already", "each person once"));
    }
  }

  /** The cells of a row by column. */
  private record Cells(String at, Map<String, String> cells) {

    Optional<String> find(String column) {
      return Optional.ofNullable(cells.get(column)).filter(cell -> !cell.isEmpty());
    }

    Optional<LocalDate> born() {
      try {
        return find("birth_date")
            .map(LocalDate::parse)
            .or(() -> find("birth_year").map(year -> middle(Integer.parseInt(year))))
            .map(
                day -> {
                  if (day.getYear() < 1850 || day.getYear() > 2100) {
                    throw fault("birth_year", "a year from 1850 to 2100");
                  }
                  return day;
                });
      } catch (DateTimeException | NumberFormatException odd) {
        throw fault("birth_date or birth_year", "1950-12-31, and 1950");
      }
    }

    private static LocalDate middle(int year) {
      return LocalDate.of(year, Month.JULY, 1);
    }

    FaultException fault(String column, String wanted) {
      return new FaultException(Fault.of(at, "a cell of " + column + " that is not so", wanted));
    }
  }

  /** Returns the examination with what the file says of the person. */
  public PooledExam apply(PooledExam exam) {
    Header header = exam.exam().header();
    Optional<String> key = header.subject().identifier().map(this::key).filter(rows::containsKey);
    key.ifPresent(met::add);
    return key.map(rows::get).map(row -> exam.with(exam.exam(), known(exam, row))).orElse(exam);
  }

  private static Person known(PooledExam exam, Row row) {
    Person before = exam.person();
    Optional<String> sex = row.sex().or(before::sex);
    LocalDate on = exam.exam().header().performed().toLocalDate();
    Person person =
        row.born().isPresent()
            ? Person.born(row.born(), sex, on)
            : new Person(before.age(), sex, before.born(), Optional.empty());
    return person.in(row.group());
  }

  /** Returns all that it says, as one text; the same for the same rows in any order. */
  public String text() {
    return bySystem + new java.util.TreeMap<>(rows).toString();
  }

  /** Returns how many rows there are. */
  public int size() {
    return rows.size();
  }

  /** Returns how many of the rows are of a person with an examination that was read. */
  public int found() {
    return met.size();
  }

  private String key(Identifier identifier) {
    return bySystem ? identifier.toString() : identifier.value();
  }
}
