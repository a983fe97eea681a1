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
import org.isopter.mapper.person.PersonsFile;
import org.isopter.mapper.pool.PoolDocument;
import org.isopter.mapper.pool.PoolPlan;
import org.isopter.mapper.pool.PoolRun;
import org.isopter.mapper.pool.Pools;
import org.isopter.mapper.privacy.Deidentifier;
import org.isopter.mapper.store.TableFormat;
import org.isopter.mapper.store.TableStore;
import org.isopter.model.catalogue.Catalogue;
import org.isopter.model.exam.Exam;
import org.isopter.model.exam.ExamSampler;
import org.isopter.model.exam.Header;
import org.isopter.model.exam.Identifier;
import org.isopter.model.exam.Party;
import org.isopter.model.value.FaultException;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** What a finding becomes in the OMOP Common Data Model 5.4, with a small vocabulary. */
class OmopTest {

  private static final String RECORD =
      """
      {"isopter":1,"record":{"id":"r-1"},"subject":{"id":"p-1"},\
      "performed":"2026-03-03T09:10:00Z","status":"final","findings":{\
      "intraocular-pressure":{"right":{"value":"17 mmHg"},"left":{"absent":"not-done"}},\
      "disc-margin":{"right":{"value":"clear"}}}}""";

  /** A refraction, and signs that were found, beside those that were not. */
  private static final String SIGNS =
      """
      {"isopter":1,"record":{"id":"r-2"},"subject":{"id":"p-1"},\
      "performed":"2026-04-03T09:10:00Z","status":"final","setting":"clinic","findings":{\
      "afferent-defect":{"both":{"value":"left","defect-grade":"2+"}},\
      "ptosis":{"right":{"value":"absent"},"left":{"value":"present"}},\
      "disc-swelling":{"right":{"value":"absent","method":"slit-lamp"}},\
      "refraction":{"right":{"sphere":"-1.00 D","cylinder":"-0.50 D","axis":"90 deg"}}}}""";

  private static final String LIMITS =
      """
      {"isopter":1,"record":{"id":"r-4"},"subject":{"id":"p-1"},\
      "performed":"2026-04-03T09:10:00Z","status":"final","findings":{\
      "acuity-beyond-line":{"right":{"value":"6/60","side-of-line":"worse"}},\
      "pressure-beyond-scale":{"right":{"value":"60 mmHg","beyond-limit":"above"},\
      "left":{"value":"5 mmHg","beyond-limit":"below"}}}}""";

  @TempDir Path folder;

  @Test
  void aPressureIsAMeasurementWithItsEyeBesideIt() throws IOException, SQLException {
    pool(List.of(Pools.json(RECORD, 1)));
    try (TableStore store = TableStore.at(folder.resolve("pool/tables.duckdb"))) {
      assertEquals(
          List.of("901", "17.000000", "903", "904", "79892-6|right", "mmHg", "17 mmHg"),
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
  void aSignThatWasFoundIsAConditionAndOneThatWasNotIsNone() throws IOException, SQLException {
    pool(List.of(Pools.json(SIGNS, 1)));
    try (TableStore store = TableStore.at(folder.resolve("pool/tables.duckdb"))) {
      assertEquals(
          List.of("914 left, 919 left"),
          row(
              store,
              "SELECT string_agg(condition_concept_id || ' ' || observation.value_as_string, ', '"
                  + " ORDER BY condition_concept_id) FROM condition_occurrence JOIN observation ON"
                  + " observation_event_id = condition_occurrence_id AND observation_concept_id ="
                  + " 907 AND obs_event_field_concept_id = 909"));
      assertEquals(
          List.of("2"),
          row(store, "SELECT count(*) FROM observation WHERE value_as_string = 'absent'"));
      assertEquals(
          List.of("0"),
          row(
              store,
              "SELECT count(*) FROM observation WHERE observation_concept_id IN (914, 915, 919)"));
      assertEquals(
          List.of("912", "911", "1950"),
          row(
              store,
              "SELECT visit_concept_id, gender_concept_id, year_of_birth - year(visit_start_date) +"
                  + " 2026 FROM visit_occurrence JOIN person USING (person_id)"));
    }
  }

  /**
   * The code of the pulsation of the veins is that of what was looked at, with every answer; its
   * domain in the model is that of conditions, and a pulsation that is absent is none.
   */
  @Test
  void aCodeThatStandsBesideEveryAnswerMakesNoCondition() throws IOException, SQLException {
    String signs =
        SIGNS.replaceFirst(
            "\"afferent-defect\":.*?}},",
            "\"venous-pulsation\":{\"left\":{\"value\":\"absent\"},\"right\":{\"value\":"
                + "\"present\"}},");
    pool(List.of(Pools.json(signs, 1)));
    try (TableStore store = TableStore.at(folder.resolve("pool/tables.duckdb"))) {
      assertEquals(
          List.of("919"),
          row(store, "SELECT string_agg(condition_concept_id) FROM condition_occurrence"));
      assertEquals(
          List.of("absent left, present right"),
          row(
              store,
              "SELECT string_agg(value_as_string || ' ' || qualifier_source_value, ', ' ORDER BY"
                  + " value_as_string) FROM observation WHERE observation_concept_id = 921"));
    }
  }

  /**
   * A limit is a number beside an operator, as the model has it, or it is a text: 60 mmHg would be
   * read as the pressure of an eye that has more, and the line as the acuity of one that sees less.
   */
  @Test
  void aLimitHasAnOperatorOrNoNumber() throws IOException, SQLException {
    pool(List.of(Pools.json(LIMITS, 1)));
    String limits =
        "SELECT string_agg(concat_ws(' ', operator_concept_id, value_as_number::DOUBLE,"
            + " unit_source_value, value_source_value), ', ' ORDER BY measurement_id)"
            + " FROM measurement";
    try (TableStore store = TableStore.at(folder.resolve("pool/tables.duckdb"))) {
      assertEquals(
          List.of(
              "922 1.0 {logMAR} worse than 6/60, 923 5.0 mm[Hg] below 5 mmHg,"
                  + " 922 60.0 mm[Hg] above 60 mmHg"),
          row(store, limits));
    }
  }

  @Test
  void thePartsOfAFindingHangTogetherAndATechniqueIsKept() throws IOException, SQLException {
    pool(List.of(Pools.json(SIGNS, 1)));
    try (TableStore store = TableStore.at(folder.resolve("pool/tables.duckdb"))) {
      // Cylinder maps to another concept, sphere is standard itself, and axis has none here.
      assertEquals(
          List.of("916 -1.000000, 918 -0.500000"),
          row(
              store,
              "SELECT string_agg(measurement_concept_id || ' ' || value_as_number, ', ' ORDER BY"
                  + " measurement_concept_id) FROM measurement WHERE measurement_concept_id <> 0"));
      assertEquals(
          List.of("1"),
          row(
              store,
              "SELECT count(DISTINCT coalesce(measurement_event_id, measurement_id)) FROM"
                  + " measurement WHERE value_source_value SIMILAR TO '.*(D|deg)'"));
      assertEquals(
          List.of("slit-lamp", "absent"),
          row(
              store,
              "SELECT m.value_as_string, o.value_as_string FROM observation m JOIN observation o ON"
                  + " m.observation_event_id = o.observation_id"
                  + " WHERE m.observation_source_value = 'method'"));
    }
  }

  @Test
  void everyValueThatWasSeenIsOneRowAndEveryIdIsItsOwn() throws IOException, SQLException {
    ExamSampler exams = new ExamSampler(Catalogue.standard().all(), new SplittableRandom(5));
    List<PoolDocument> documents = new ArrayList<>();
    for (int i = 1; i <= 200; i++) {
      // All of one person, whose year of birth is known.
      Exam exam = exams.next();
      Header header =
          Header.of(exam.header().id(), Party.of(Identifier.of("p-1")), exam.header().performed());
      documents.add(Pools.record(new Exam(header, exam.facts()), i));
    }
    pool(documents);
    try (TableStore store = TableStore.at(folder.resolve("pool/tables.duckdb"))) {
      String seen =
          "SELECT count(*) FROM findings WHERE NOT derived AND absent IS NULL"
              + " AND status <> 'entered-in-error'";
      String rows =
          "SELECT (SELECT count(*) FROM measurement) + (SELECT count(*) FROM condition_occurrence)"
              + " + (SELECT count(*) FROM observation"
              + " WHERE observation_source_value NOT IN ('272741003', 'method'))";
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
          List.of("17.000000"), row(store, "SELECT string_agg(value_as_number) FROM measurement"));
      assertEquals(List.of("1"), row(store, "SELECT count(*) FROM visit_keys"));
    }
  }

  @Test
  void conceptsThatCannotBeReadAreRefusedBeforeAnythingIsPooled() throws IOException {
    Path file = folder.resolve("CONCEPT.csv");
    Files.writeString(file, Vocabulary.text().replace("901", "nine") + "\n");
    FaultException word = assertThrows(FaultException.class, () -> begin(folder));
    assertTrue(word.getMessage().contains("1 row whose concept_id"), word.getMessage());
    Files.writeString(file, Vocabulary.HEADER + "\n1\tshort\n");
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
    pool(documents, Vocabulary.write(folder.resolve("vocabulary")));
  }

  private void pool(List<PoolDocument> documents, Path vocabulary) throws IOException {
    Path file = folder.resolve("persons.csv");
    Files.writeString(file, "id,birth_year,sex\np-1,1950,female\n");
    try (PoolRun run =
        PoolRun.begin(Catalogue.standard(), Pools.reader(), plan(vocabulary))
            .knowing(Optional.of(PersonsFile.read(file)))) {
      for (PoolDocument document : documents) {
        run.add(document);
      }
      assertEquals(0, run.finish().counts().refused());
    }
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
}
