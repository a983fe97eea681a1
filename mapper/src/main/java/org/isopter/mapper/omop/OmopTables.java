package org.isopter.mapper.omop;

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
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.isopter.mapper.store.TableFormat;
import org.isopter.mapper.store.TableStore;
import org.isopter.model.catalogue.Catalogue;
import org.isopter.model.finding.Finding;
import org.isopter.model.value.Code;
import org.isopter.model.value.Concept;
import org.isopter.model.value.Site;

/**
 * Lays what was seen out as tables of the OMOP Common Data Model, version 5.4
 * (ohdsi.github.io/CommonDataModel), with the concept ids of a vocabulary that the user has, and 0
 * where it has none.
 */
public final class OmopTables {

  /** The folder of the tables within a pool. */
  public static final String FOLDER = "omop";

  /**
   * The tables of the model that are filled, those that join their ids to ours, what has no row.
   */
  public static final List<String> TABLES =
      List.of(
          "person",
          "observation_period",
          "visit_occurrence",
          "condition_occurrence",
          "measurement",
          "observation",
          "person_keys",
          "visit_keys",
          "left_out");

  /** What stands for the finding where a word means the same for all. */
  private static final String EVERY = "";

  private OmopTables() {}

  /**
   * Makes the tables in the store, writes them to a folder, and returns how many persons are in
   * none of them, since the model has no person without a year of birth.
   *
   * @throws SQLException when the database refuses it, for instance for a full disk
   * @throws IOException when a file cannot be written
   */
  public static long write(
      TableStore store, Path vocabulary, List<TableFormat> formats, Path folder)
      throws SQLException, IOException {
    OmopVocabulary.open(store, vocabulary);
    words(store);
    for (String statement : statements()) {
      store.execute(statement);
    }
    Files.createDirectories(folder);
    for (String table : TABLES) {
      for (TableFormat format : formats) {
        store.copy(table, format, folder.resolve(table + "." + format.ending()));
      }
    }
    return (Long) store.ask("SELECT persons FROM left_out").get(0).get(0).orElse(0L);
  }

  /**
   * Makes a table of the codes of techniques, which differ by finding, and of eyes, and one of the
   * codes that a finding has beside certain answers alone.
   */
  private static void words(TableStore store) throws SQLException {
    store.execute("CREATE TEMP TABLE answer_code (finding VARCHAR, system VARCHAR, code VARCHAR)");
    store.execute(
        "CREATE TEMP TABLE word_code (finding VARCHAR, word VARCHAR, system VARCHAR, code VARCHAR)");
    for (Site eye : Site.values()) {
      word(store, EVERY, eye);
    }
    for (Finding<?> finding : Catalogue.standard().all()) {
      for (Concept method :
          finding.methods().map(list -> List.copyOf(list.concepts())).orElse(List.of())) {
        word(store, finding.id(), method);
      }
      for (Code code : answers(finding)) {
        insert(store, "answer_code", finding.id(), code.system(), code.code());
      }
    }
  }

  private static List<Code> answers(Finding<?> finding) {
    return finding.codes().refined().stream()
        .flatMap(refined -> refined.codes().stream())
        .distinct()
        .toList();
  }

  private static void word(TableStore store, String finding, Concept concept) throws SQLException {
    Code code = concept.code();
    insert(store, "word_code", finding, concept.word(), code.system(), code.code());
  }

  private static void insert(TableStore store, String table, String... texts) throws SQLException {
    String cells = Stream.of(texts).map(TableStore::text).collect(Collectors.joining(", "));
    store.execute("INSERT INTO " + table + " VALUES (" + cells + ")");
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
    try (InputStream file = OmopTables.class.getResourceAsStream("omop.sql")) {
      return new String(Objects.requireNonNull(file).readAllBytes(), UTF_8);
    } catch (IOException unreadable) {
      throw new UncheckedIOException(unreadable);
    }
  }
}
