package org.isopter.mapper.omop;

import static java.nio.charset.StandardCharsets.UTF_8;

import java.io.IOException;
import java.io.InputStream;
import java.nio.file.Path;
import java.sql.SQLException;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.stream.Collectors;
import org.isopter.mapper.store.TableStore;

/**
 * The tables of the OMOP Common Data Model 5.4 as its published definition has them: fields in
 * order, types, which must be filled, keys (ohdsi.github.io/CommonDataModel/cdm54.html, and the
 * definition files for databases beside it, of which only the facts are kept here).
 */
final class OmopModel {

  /** A field of the definition. */
  record Field(String table, String name, String type, String required, String references) {

    String sql() {
      String plain = type.equals("numeric") ? "DECIMAL(18, 6)" : type;
      String need =
          switch (required) {
            case "key" -> " PRIMARY KEY";
            case "yes" -> " NOT NULL";
            default -> "";
          };
      // A reference to the table itself would ask for an order of its rows.
      boolean other = !references.isEmpty() && !references.equals(table);
      return name + " " + plain + need + (other ? " REFERENCES " + references : "");
    }

    /** Returns the most characters of a text; 0 where it is none. */
    int length() {
      return type.startsWith("varchar") ? Integer.parseInt(type.replaceAll("\\D", "")) : 0;
    }
  }

  private OmopModel() {}

  static List<Field> fields() throws IOException {
    try (InputStream file = OmopModel.class.getResourceAsStream("/omop/fields-5.4.tsv")) {
      return new String(Objects.requireNonNull(file).readAllBytes(), UTF_8)
          .lines()
          .skip(1)
          .map(line -> line.split("\t", -1))
          .map(cells -> new Field(cells[0], cells[1], cells[2], cells[3], cells[4]))
          .toList();
    }
  }

  static Map<String, List<Field>> tables() throws IOException {
    Map<String, List<Field>> tables = new LinkedHashMap<>();
    fields()
        .forEach(
            field -> tables.computeIfAbsent(field.table(), any -> new ArrayList<>()).add(field));
    return tables;
  }

  /**
   * Makes the tables of the definition in a database of its own and loads what was written: it
   * refuses what is of another type, lacks what must be there, or names what is not there.
   */
  static TableStore load(Path vocabulary, Path folder) throws IOException, SQLException {
    TableStore store = TableStore.inMemory();
    for (Map.Entry<String, List<Field>> table : tables().entrySet()) {
      String fields = table.getValue().stream().map(Field::sql).collect(Collectors.joining(", "));
      store.execute("CREATE TABLE " + table.getKey() + " (" + fields + ")");
      store.execute(
          "INSERT INTO " + table.getKey() + " " + rows(table.getKey(), vocabulary, folder));
    }
    return store;
  }

  private static String rows(String table, Path vocabulary, Path folder) {
    return table.equals("concept")
        ? "SELECT concept_id, concept_name, domain_id, vocabulary_id, concept_class_id,"
            + " standard_concept, concept_code FROM read_csv("
            + TableStore.text(vocabulary.resolve("CONCEPT.csv").toString())
            + ", delim = '\t', quote = '', escape = '', header = true, all_varchar = true)"
        : "FROM read_parquet("
            + TableStore.text(folder.resolve("omop/" + table + ".parquet").toString())
            + ")";
  }
}
