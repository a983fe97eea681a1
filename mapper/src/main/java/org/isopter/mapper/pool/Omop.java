package org.isopter.mapper.pool;

import static java.nio.charset.StandardCharsets.UTF_8;

import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.sql.SQLException;
import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import org.isopter.model.value.Fault;
import org.isopter.model.value.FaultException;

/**
 * Lays what was seen out as MEASUREMENT and OBSERVATION of the OMOP Common Data Model, version 5.4
 * (ohdsi.github.io/CommonDataModel), with the concept ids of a vocabulary that the user has, and 0
 * where it has none.
 */
final class Omop {

  /** The tables of the model that are filled, and those that join their ids to ours. */
  static final List<String> TABLES =
      List.of("measurement", "observation", "person_keys", "visit_keys");

  private static final String FILE = "CONCEPT.csv";

  private static final List<String> COLUMNS =
      List.of(
          "concept_id",
          "concept_name",
          "domain_id",
          "vocabulary_id",
          "standard_concept",
          "concept_code",
          "invalid_reason");

  private Omop() {}

  /**
   * Returns the file of concepts in a folder.
   *
   * @throws FaultException when there is none
   */
  static Path concepts(Path vocabulary) {
    Path file = vocabulary.resolve(FILE);
    if (!Files.isRegularFile(file)) {
      throw new FaultException(
          new Fault(
              vocabulary.toString(),
              "no " + FILE,
              "a folder of OMOP vocabulary files",
              "unpack a download of the vocabularies LOINC, SNOMED and UCUM there"));
    }
    return file;
  }

  /** Makes the tables in the warehouse and writes them to a folder. */
  static void write(Warehouse warehouse, Path concepts, List<TableFormat> formats, Path folder)
      throws SQLException, IOException {
    open(warehouse, concepts);
    for (String statement : statements()) {
      warehouse.execute(statement);
    }
    Files.createDirectories(folder);
    for (String table : TABLES) {
      for (TableFormat format : formats) {
        warehouse.copy(table, format, folder.resolve(table + "." + format.ending()));
      }
    }
  }

  /** A vocabulary file has tabs between its columns, and quotes mean nothing in it. */
  private static void open(Warehouse warehouse, Path concepts) throws SQLException {
    warehouse.execute(
        "CREATE TEMP VIEW vocabulary_file AS SELECT * FROM read_csv("
            + Warehouse.text(concepts.toString())
            + ", delim = '\t', quote = '', escape = '', header = true, all_varchar = true)");
    List<Object> there = new ArrayList<>();
    for (List<Optional<Object>> row : warehouse.ask("DESCRIBE vocabulary_file")) {
      there.add(row.get(0).orElse(""));
    }
    for (String column : COLUMNS) {
      if (!there.contains(column)) {
        throw new FaultException(
            new Fault(
                concepts.toString(),
                "columns " + there,
                "a column " + column,
                "take the file as it was downloaded, with tabs between its columns"));
      }
    }
  }

  private static List<String> statements() {
    List<String> statements = new ArrayList<>();
    StringBuilder statement = new StringBuilder();
    for (String line : (Iterable<String>) script().lines()::iterator) {
      if (!line.startsWith("--")) {
        statement.append(line).append('\n');
      }
      if (line.endsWith(";")) {
        statements.add(statement.toString());
        statement.setLength(0);
      }
    }
    return statements;
  }

  private static String script() {
    try (InputStream file = Omop.class.getResourceAsStream("omop.sql")) {
      return new String(Objects.requireNonNull(file).readAllBytes(), UTF_8);
    } catch (IOException unreadable) {
      throw new UncheckedIOException(unreadable);
    }
  }
}
