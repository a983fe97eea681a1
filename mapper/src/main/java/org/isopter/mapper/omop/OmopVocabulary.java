package org.isopter.mapper.omop;

import java.nio.file.Files;
import java.nio.file.Path;
import java.sql.SQLException;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.stream.Collectors;
import org.isopter.mapper.store.PoolTables;
import org.isopter.mapper.store.TableStore;
import org.isopter.model.value.Fault;
import org.isopter.model.value.FaultException;

/** The concepts of an OMOP vocabulary that a user has downloaded. */
public final class OmopVocabulary {

  private static final String FILE = "CONCEPT.csv";

  /** Which concept maps to which: not every download of a site keeps it. */
  private static final String RELATIONSHIPS = "CONCEPT_RELATIONSHIP.csv";

  private static final List<String> RELATIONSHIP_COLUMNS =
      List.of("concept_id_1", "concept_id_2", "relationship_id", "invalid_reason");

  private static final String ADVICE =
      "take the file as it was downloaded, with tabs between its columns";

  private static final List<String> COLUMNS =
      List.of(
          "concept_id",
          "concept_name",
          "domain_id",
          "vocabulary_id",
          "standard_concept",
          "concept_code",
          "invalid_reason");

  private OmopVocabulary() {}

  /**
   * Checks, before anything is pooled, that a folder holds concepts that can be read.
   *
   * @throws FaultException when it does not
   */
  public static void check(Path folder) {
    try (TableStore store = TableStore.inMemory()) {
      open(store, folder);
      long odd =
          (Long)
              store
                  .ask(
                      "SELECT count(*) FROM vocabulary_file"
                          + " WHERE try_cast(concept_id AS BIGINT) IS NULL")
                  .get(0)
                  .get(0)
                  .orElse(0L);
      if (odd > 0) {
        String seen = odd + (odd == 1 ? " row" : " rows") + " whose concept_id is no whole number";
        throw fault(folder.resolve(FILE), seen, "a whole number in each");
      }
    } catch (SQLException unreadable) {
      throw unreadable(folder.resolve(FILE), unreadable);
    }
  }

  /**
   * Makes the concepts and their relationships views of a store.
   *
   * @throws SQLException when the database refuses it, for instance for a full disk
   */
  public static void open(TableStore store, Path folder) throws SQLException {
    view(store, "vocabulary_file", file(folder), COLUMNS);
    Path relationships = folder.resolve(RELATIONSHIPS);
    if (Files.isRegularFile(relationships)) {
      view(store, "relationship_file", relationships, RELATIONSHIP_COLUMNS);
    } else {
      String columns =
          RELATIONSHIP_COLUMNS.stream()
              .map(column -> "NULL::VARCHAR AS " + column)
              .collect(Collectors.joining(", "));
      store.execute("CREATE TEMP VIEW relationship_file AS SELECT " + columns + " LIMIT 0");
    }
  }

  /** Quotes mean nothing in the files. */
  private static void view(TableStore store, String name, Path file, List<String> columns)
      throws SQLException {
    store.execute(
        "CREATE TEMP VIEW %s AS SELECT * FROM read_csv(%s, delim = '\t', quote = '', escape = '',"
                .formatted(name, TableStore.text(file.toString()))
            + " header = true, all_varchar = true)");
    List<Object> there = new ArrayList<>();
    for (List<Optional<Object>> row : store.ask("DESCRIBE " + name)) {
      there.add(row.get(0).orElse(""));
    }
    for (String column : columns) {
      if (!there.contains(column)) {
        throw fault(file, "columns " + there, "a column " + column);
      }
    }
  }

  private static Path file(Path folder) {
    Path file = folder.resolve(FILE);
    if (!Files.isRegularFile(file)) {
      throw new FaultException(
          new Fault(
              folder.toString(),
              "no " + FILE,
              "a folder of OMOP vocabulary files",
              "unpack a download of the vocabularies LOINC, SNOMED and UCUM there"));
    }
    return file;
  }

  private static FaultException unreadable(Path file, SQLException why) {
    return fault(
        file,
        "what is no table (" + PoolTables.why(why) + ")",
        "a concept a line, in UTF-8, with as many columns as the first line");
  }

  private static FaultException fault(Path file, String seen, String wanted) {
    return new FaultException(new Fault(file.toString(), seen, wanted, ADVICE));
  }
}
