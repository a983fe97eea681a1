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
import org.isopter.mapper.store.TableFormat;
import org.isopter.mapper.store.TableStore;

/**
 * Lays what was seen out as MEASUREMENT and OBSERVATION of the OMOP Common Data Model, version 5.4
 * (ohdsi.github.io/CommonDataModel), with the concept ids of a vocabulary that the user has, and 0
 * where it has none.
 */
public final class OmopTables {

  /** The tables of the model that are filled, and those that join their ids to ours. */
  static final List<String> TABLES =
      List.of("measurement", "observation", "person_keys", "visit_keys");

  private OmopTables() {}

  /** Makes the tables in the store and writes them to a folder. */
  public static void write(
      TableStore store, Path vocabulary, List<TableFormat> formats, Path folder)
      throws SQLException, IOException {
    OmopVocabulary.open(store, vocabulary);
    for (String statement : statements()) {
      store.execute(statement);
    }
    Files.createDirectories(folder);
    for (String table : TABLES) {
      for (TableFormat format : formats) {
        store.copy(table, format, folder.resolve(table + "." + format.ending()));
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
    try (InputStream file = OmopTables.class.getResourceAsStream("omop.sql")) {
      return new String(Objects.requireNonNull(file).readAllBytes(), UTF_8);
    } catch (IOException unreadable) {
      throw new UncheckedIOException(unreadable);
    }
  }
}
