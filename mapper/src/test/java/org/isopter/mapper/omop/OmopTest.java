package org.isopter.mapper.omop;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.sql.SQLException;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.SplittableRandom;
import org.isopter.mapper.pool.PoolDocument;
import org.isopter.mapper.pool.PoolPlan;
import org.isopter.mapper.pool.PoolRun;
import org.isopter.mapper.pool.Pools;
import org.isopter.mapper.privacy.Deidentifier;
import org.isopter.mapper.store.TableFormat;
import org.isopter.mapper.store.TableStore;
import org.isopter.model.catalogue.Catalogue;
import org.isopter.model.exam.ExamSampler;
import org.isopter.model.value.FaultException;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/**
 * Rows of the OMOP Common Data Model 5.4, with a small vocabulary whose ids are invented. The names
 * and the order of the columns are those of the specification at
 * ohdsi.github.io/CommonDataModel/cdm54.html (written from memory).
 */
class OmopTest {

  private static final String HEADER =
      "concept_id\tconcept_name\tdomain_id\tvocabulary_id\tconcept_class_id\tstandard_concept"
          + "\tconcept_code\tvalid_start_date\tvalid_end_date\tinvalid_reason";

  private static final String VOCABULARY =
      String.join(
          "\n",
          HEADER,
          concept(901, "Pressure right", "Measurement", "LOINC", "S", "79892-6"),
          concept(902, "Pressure, old", "Measurement", "SNOMED", "", "41633001"),
          concept(903, "mmHg", "Unit", "UCUM", "S", "mm[Hg]"),
          concept(904, "EHR", "Type Concept", "Type Concept", "S", "OMOP4976890"),
          concept(905, "measurement.measurement_id", "Metadata", "CDM", "S", "CDM1"),
          concept(906, "Right \"eye\"", "Spec Anatomic Site", "SNOMED", "S", "362502000"),
          concept(907, "Laterality", "Observation", "SNOMED", "S", "272741003"));

  private static final String RECORD =
      """
      {"isopter":1,"record":{"id":"r-1"},"subject":{"id":"p-1"},\
      "performed":"2026-03-03T09:10:00Z","status":"final","findings":{\
      "intraocular-pressure":{"right":{"value":"17 mmHg"},"left":{"absent":"not-done"}},\
      "disc-margin":{"right":{"value":"clear"}}}}""";

  @TempDir Path folder;

  @Test
  void aPressureIsAMeasurementWithItsEyeBesideIt() throws IOException, SQLException {
    pool(List.of(Pools.json(RECORD, 1)));
    try (TableStore store = TableStore.at(folder.resolve("pool/tables.duckdb"))) {
      assertEquals(
          List.of("901", "17.0", "903", "904", "79892-6|right", "mmHg", "17 mmHg"),
          row(
              store,
              "SELECT measurement_concept_id, value_as_number, unit_concept_id,"
                  + " measurement_type_concept_id, measurement_source_value, unit_source_value,"
                  + " value_source_value FROM measurement WHERE value_source_value = '17 mmHg'"));
      assertEquals(
          List.of("907", "906", "right", "905"),
          row(
              store,
              "SELECT observation_concept_id, observation.value_as_concept_id,"
                  + " observation.value_source_value,"
                  + " obs_event_field_concept_id FROM observation JOIN measurement ON"
                  + " observation_event_id = measurement_id"
                  + " WHERE measurement.value_source_value = '17 mmHg'"));
      assertEquals(
          List.of("0", "906", "right"),
          row(
              store,
              "SELECT observation_concept_id, qualifier_concept_id, qualifier_source_value"
                  + " FROM observation WHERE value_source_value = 'clear'"));
      assertEquals(List.of("1"), row(store, "SELECT count(*) FROM measurement"));
    }
  }

  @Test
  void everyValueThatWasSeenIsOneRowAndEveryIdIsItsOwn() throws IOException, SQLException {
    ExamSampler exams = new ExamSampler(Catalogue.standard().all(), new SplittableRandom(5));
    List<PoolDocument> documents = new ArrayList<>();
    for (int i = 1; i <= 200; i++) {
      documents.add(Pools.record(exams.next(), i));
    }
    pool(documents);
    try (TableStore store = TableStore.at(folder.resolve("pool/tables.duckdb"))) {
      String seen =
          "SELECT count(*) FROM findings WHERE NOT derived AND absent IS NULL"
              + " AND status <> 'entered-in-error'";
      String rows =
          "SELECT (SELECT count(*) FROM measurement) + (SELECT count(*) FROM observation"
              + " WHERE observation_source_value <> '272741003')";
      assertEquals(row(store, seen), row(store, rows));
      for (String table : List.of("measurement", "observation")) {
        String id = table + "_id";
        assertEquals(
            row(store, "SELECT count(*) FROM " + table),
            row(store, "SELECT count(DISTINCT " + id + ") FROM " + table));
      }
    }
  }

  @Test
  void whatWasReplacedOrEnteredInErrorHasNoRowAndWhatWasReadTwiceHasOne()
      throws IOException, SQLException {
    String replaced = RECORD.replace("r-1", "r-0").replace("17", "27");
    String amended = RECORD.replace("\"final\"", "\"amended\",\"amends\":{\"id\":\"r-0\"}");
    String error =
        RECORD.replace("r-1", "r-3").replace("17", "37").replace("final", "entered-in-error");
    pool(
        List.of(
            Pools.json(replaced, 1),
            Pools.json(amended, 2),
            Pools.json(amended, 3),
            Pools.json(error, 4)));
    try (TableStore store = TableStore.at(folder.resolve("pool/tables.duckdb"))) {
      assertEquals(
          List.of("17.0"), row(store, "SELECT string_agg(value_as_number) FROM measurement"));
      assertEquals(List.of("1"), row(store, "SELECT count(*) FROM visit_keys"));
    }
  }

  @Test
  void conceptsThatCannotBeReadAreRefusedBeforeAnythingIsPooled() throws IOException {
    Path file = folder.resolve("CONCEPT.csv");
    Files.writeString(file, VOCABULARY.replace("901", "nine") + "\n");
    FaultException word = assertThrows(FaultException.class, () -> begin(folder));
    assertTrue(word.getMessage().contains("1 row whose concept_id"), word.getMessage());
    Files.writeString(file, HEADER + "\n1\tshort\n");
    FaultException narrow = assertThrows(FaultException.class, () -> begin(folder));
    assertTrue(narrow.getMessage().contains("no table"), narrow.getMessage());
  }

  private void begin(Path vocabulary) throws IOException {
    PoolRun.begin(Catalogue.standard(), Pools.reader(), plan(vocabulary)).close();
  }

  @Test
  void aVocabularyThatIsNoneIsRefused() throws IOException {
    FaultException none = assertThrows(FaultException.class, () -> pool(List.of(), folder));
    assertTrue(none.getMessage().contains("no CONCEPT.csv"), none.getMessage());
    Files.writeString(folder.resolve("CONCEPT.csv"), "a,b\n1,2\n");
    FaultException other = assertThrows(FaultException.class, () -> pool(List.of(), folder));
    assertTrue(other.getMessage().contains("a column concept_id"), other.getMessage());
  }

  private void pool(List<PoolDocument> documents) throws IOException {
    Path vocabulary = Files.createDirectory(folder.resolve("vocabulary"));
    Files.writeString(vocabulary.resolve("CONCEPT.csv"), VOCABULARY + "\n");
    pool(documents, vocabulary);
  }

  private void pool(List<PoolDocument> documents, Path vocabulary) throws IOException {
    Pools.run(plan(vocabulary), documents);
  }

  private PoolPlan plan(Path vocabulary) {
    return PoolPlan.of(folder.resolve("pool"), new Deidentifier(Pools.KEY, false))
        .in(List.of(TableFormat.CSV))
        .withDatabase()
        .omop(Optional.of(vocabulary));
  }

  private static List<String> row(TableStore store, String sql) throws SQLException {
    return store.ask(sql).get(0).stream()
        .map(cell -> cell.map(Object::toString).orElse(""))
        .toList();
  }

  private static String concept(
      int id, String name, String domain, String vocabulary, String standard, String code) {
    return String.join(
        "\t",
        Integer.toString(id),
        name,
        domain,
        vocabulary,
        "Invented",
        standard,
        code,
        "19700101",
        "20991231",
        "");
  }
}
