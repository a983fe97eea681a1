package org.isopter.mapper.omop;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.sql.SQLException;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import org.isopter.mapper.person.PersonsFile;
import org.isopter.mapper.pool.PoolPlan;
import org.isopter.mapper.pool.PoolRun;
import org.isopter.mapper.pool.Pools;
import org.isopter.mapper.privacy.DateShift;
import org.isopter.mapper.privacy.Deidentifier;
import org.isopter.mapper.store.TableStore;
import org.isopter.model.catalogue.Catalogue;
import org.isopter.model.exam.Demographics;
import org.isopter.model.exam.Exam;
import org.isopter.model.simulate.Cohort;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.TestInstance;
import org.junit.jupiter.api.io.TempDir;

/**
 * The tables of invented persons in a database that has the definition of the model, and the data
 * quality rules that its community publishes (github.com/OHDSI/DataQualityDashboard, field and
 * table checks of version 5.4), each under its published name.
 */
@TestInstance(TestInstance.Lifecycle.PER_CLASS)
class OmopRulesTest {

  private static final int PERSONS = 60;

  private Path folder = Path.of("");

  private @Nullable TableStore store;

  @BeforeAll
  void pool(@TempDir Path temporary) throws IOException, SQLException {
    folder = temporary;
    Path vocabulary = Vocabulary.write(folder.resolve("vocabulary"));
    StringBuilder persons = new StringBuilder("id,birth_year,sex\n");
    for (int i = 0; i < PERSONS; i++) {
      // One in ten has no row, and so no year of birth.
      if (i % 10 != 3) {
        persons.append("gen-p-5-%d,%d,%s%n".formatted(i, 1940 + i, i % 2 == 0 ? "female" : "male"));
      }
    }
    Path file = Files.writeString(folder.resolve("persons.csv"), persons);
    PoolPlan plan =
        PoolPlan.of(
                folder.resolve("pool"), new Deidentifier(Pools.KEY, false).moving(DateShift.BACK))
            .omop(Optional.of(vocabulary));
    try (PoolRun run =
        PoolRun.begin(Catalogue.standard(), Pools.reader(), plan)
            .knowing(Optional.of(PersonsFile.read(file)))) {
      long[] line = {0};
      new Cohort(PERSONS, 5)
          .exams()
          .forEach(
              exam -> {
                try {
                  run.add(Pools.record(known(exam), ++line[0]));
                } catch (IOException failed) {
                  throw new java.io.UncheckedIOException(failed);
                }
              });
      assertEquals(6, run.finish().aside().ageless());
    }
    // Loading checks cdmField, cdmDatatype, isRequired, isPrimaryKey and isForeignKey.
    store = OmopModel.load(vocabulary, folder.resolve("pool"));
  }

  /** The persons without a row state no age in their records either. */
  private static Exam known(Exam exam) {
    return exam.header().subject().identifier().orElseThrow().value().endsWith("3")
        ? new Exam(exam.header().with(Demographics.UNKNOWN), exam.facts())
        : exam;
  }

  @AfterAll
  void close() throws SQLException {
    store().close();
  }

  @Test
  void everyTableHasTheFieldsOfTheDefinitionInItsOrder() throws IOException, SQLException {
    for (Map.Entry<String, List<OmopModel.Field>> table : OmopModel.tables().entrySet()) {
      if (!table.getKey().equals("concept")) {
        List<String> names = new ArrayList<>();
        for (List<Optional<Object>> row : store().ask("DESCRIBE FROM " + file(table.getKey()))) {
          names.add(row.get(0).orElseThrow().toString());
        }
        assertEquals(table.getValue().stream().map(OmopModel.Field::name).toList(), names);
      }
    }
  }

  @Test
  void cdmDatatypeHoldsOfIdsAndTextsFitTheirLength() throws IOException, SQLException {
    for (OmopModel.Field field : OmopModel.fields()) {
      if (field.length() > 0) {
        none(
            "FROM %s WHERE length(%s) > %d".formatted(field.table(), field.name(), field.length()));
      }
      if (field.type().equals("integer") && !field.table().equals("concept")) {
        assertEquals(
            "INTEGER",
            one("SELECT typeof(any_value(" + field.name() + ")) FROM " + file(field.table())));
      }
    }
  }

  @Test
  void measurePersonCompletenessHolds() throws SQLException {
    assertEquals("54", one("SELECT count(*) FROM person"));
    for (String table : List.of("observation_period", "visit_occurrence", "observation")) {
      none("FROM person WHERE person_id NOT IN (SELECT person_id FROM " + table + ")");
    }
  }

  @Test
  void fkDomainHolds() throws SQLException {
    domain("person", "gender_concept_id", "Gender");
    domain("visit_occurrence", "visit_concept_id", "Visit");
    domain("condition_occurrence", "condition_concept_id", "Condition");
    domain("measurement", "measurement_concept_id", "Measurement");
    domain("measurement", "unit_concept_id", "Unit");
    domain("observation_period", "period_type_concept_id", "Type Concept");
    domain("visit_occurrence", "visit_type_concept_id", "Type Concept");
    domain("condition_occurrence", "condition_type_concept_id", "Type Concept");
    domain("measurement", "measurement_type_concept_id", "Type Concept");
    domain("observation", "observation_type_concept_id", "Type Concept");
  }

  @Test
  void isStandardValidConceptHolds() throws SQLException {
    for (String field :
        List.of(
            "person.gender_concept_id",
            "visit_occurrence.visit_concept_id",
            "condition_occurrence.condition_concept_id",
            "measurement.measurement_concept_id",
            "measurement.unit_concept_id",
            "measurement.value_as_concept_id",
            "observation.observation_concept_id",
            "observation.value_as_concept_id",
            "observation.qualifier_concept_id")) {
      String table = field.substring(0, field.indexOf('.'));
      none(
          "FROM %s JOIN concept c ON c.concept_id = %s WHERE %s <> 0 AND c.standard_concept IS DISTINCT FROM 'S'"
              .formatted(table, field, field));
    }
  }

  @Test
  void plausibleValueLowAndHighHoldOfYearsAndDates() throws SQLException {
    none("FROM person WHERE year_of_birth < 1850 OR year_of_birth > year(current_date) + 1");
    for (String date :
        List.of(
            "observation_period.observation_period_start_date",
            "observation_period.observation_period_end_date",
            "visit_occurrence.visit_start_date",
            "visit_occurrence.visit_end_date",
            "condition_occurrence.condition_start_date",
            "measurement.measurement_date",
            "observation.observation_date")) {
      String table = date.substring(0, date.indexOf('.'));
      none(
          "FROM %s WHERE %s < DATE '1950-01-01' OR %s > current_date + 1"
              .formatted(table, date, date));
    }
  }

  @Test
  void plausibleStartBeforeEndAndAfterBirthHold() throws SQLException {
    none(
        "FROM observation_period WHERE observation_period_end_date < observation_period_start_date");
    none("FROM visit_occurrence WHERE visit_end_date < visit_start_date");
    none(
        "FROM visit_occurrence JOIN person USING (person_id)"
            + " WHERE year(visit_start_date) < year_of_birth");
  }

  @Test
  void withinVisitDatesAndTheObservationPeriodHold() throws SQLException {
    for (String date :
        List.of(
            "condition_occurrence.condition_start_date",
            "measurement.measurement_date",
            "observation.observation_date")) {
      String table = date.substring(0, date.indexOf('.'));
      none(
          "FROM %s t JOIN visit_occurrence v USING (visit_occurrence_id) WHERE %s NOT BETWEEN visit_start_date AND visit_end_date OR t.person_id <> v.person_id"
              .formatted(table, date.replace(table + ".", "t.")));
      none(
          "FROM %s t JOIN observation_period USING (person_id) WHERE %s NOT BETWEEN observation_period_start_date AND observation_period_end_date"
              .formatted(table, date.replace(table + ".", "t.")));
    }
  }

  @Test
  void whatIsLinkedIsThere() throws SQLException {
    none(
        "FROM visit_occurrence v LEFT JOIN visit_occurrence p"
            + " ON p.visit_occurrence_id = v.preceding_visit_occurrence_id"
            + " WHERE v.preceding_visit_occurrence_id IS NOT NULL"
            + " AND (p.person_id IS DISTINCT FROM v.person_id"
            + " OR p.visit_start_date > v.visit_start_date)");
    for (String table : List.of("measurement", "condition_occurrence", "observation")) {
      String linked =
          "SELECT observation_event_id AS id FROM observation JOIN concept ON concept_id ="
              + " obs_event_field_concept_id WHERE concept_name = '%1$s.%1$s_id' UNION ALL"
              + " SELECT measurement_event_id FROM measurement JOIN concept ON concept_id ="
              + " meas_event_field_concept_id WHERE concept_name = '%1$s.%1$s_id'";
      none(
          "FROM (%s) WHERE id NOT IN (SELECT %s_id FROM %s)"
              .formatted(linked.formatted(table), table, table));
      assertTrue(
          Integer.parseInt(one("SELECT count(*) FROM (" + linked.formatted(table) + ")")) > 0,
          table);
    }
  }

  @Test
  void aConditionIsOnlyWhatWasFound() throws SQLException {
    assertTrue(Integer.parseInt(one("SELECT count(*) FROM condition_occurrence")) > 0);
    none(
        "FROM condition_occurrence WHERE condition_source_value SIMILAR TO '.*\\|(none|absent|full|normal|unsure)'");
  }

  private TableStore store() {
    return Objects.requireNonNull(store);
  }

  private void domain(String table, String field, String domain) throws SQLException {
    none(
        "FROM %s JOIN concept ON concept_id = %s WHERE concept_id <> 0 AND domain_id <> '%s'"
            .formatted(table, field, domain));
    assertTrue(
        Integer.parseInt(one("SELECT count(*) FROM " + table + " WHERE " + field + " <> 0")) > 0,
        table + "." + field);
  }

  private String file(String table) {
    return "read_parquet("
        + TableStore.text(folder.resolve("pool/omop/" + table + ".parquet").toString())
        + ")";
  }

  private void none(String from) throws SQLException {
    assertEquals("0", one("SELECT count(*) " + from), from);
  }

  private String one(String sql) throws SQLException {
    return store().ask(sql).get(0).get(0).map(Object::toString).orElse("");
  }
}
