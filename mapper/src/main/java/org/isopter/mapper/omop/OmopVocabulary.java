package org.isopter.mapper.omop;

import java.nio.file.Files;
import java.nio.file.Path;
import java.sql.SQLException;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.isopter.mapper.store.PoolTables;
import org.isopter.mapper.store.TableStore;
import org.isopter.model.value.Fault;
import org.isopter.model.value.FaultException;

/** The concepts of an OMOP vocabulary that a user has downloaded. */
public final class OmopVocabulary {

  private static final String FILE = "CONCEPT.csv";

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

  /** Makes the concepts a view of a store; quotes mean nothing in the file. */
  public static void open(TableStore store, Path folder) throws SQLException {
    Path file = file(folder);
    store.execute(
        "CREATE TEMP VIEW vocabulary_file AS SELECT * FROM read_csv("
            + TableStore.text(file.toString())
            + ", delim = '\t', quote = '', escape = '', header = true, all_varchar = true)");
    List<Object> there = new ArrayList<>();
    for (List<Optional<Object>> row : store.ask("DESCRIBE vocabulary_file")) {
      there.add(row.get(0).orElse(""));
    }
    for (String column : COLUMNS) {
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
