-- Rows of the OMOP Common Data Model 5.4 from the table of findings and a vocabulary.
-- Ids are 63 bits of the MD5 (RFC 1321) of the keys: the same keys give the same ids in any pool.

CREATE TEMP TABLE concept AS
SELECT concept_id::BIGINT AS concept_id, concept_name, domain_id, vocabulary_id, standard_concept,
  concept_code
FROM vocabulary_file
WHERE vocabulary_id IN ('LOINC', 'SNOMED', 'UCUM', 'CDM', 'Type Concept')
  AND coalesce(invalid_reason, '') = '';

CREATE TEMP TABLE system_vocabulary (system VARCHAR, vocabulary_id VARCHAR);
INSERT INTO system_vocabulary VALUES
  ('http://loinc.org', 'LOINC'),
  ('http://snomed.info/sct', 'SNOMED');

-- Any concept names the source; only a standard one may stand for the meaning.
CREATE TEMP TABLE meaning AS
SELECT s.system, c.concept_code AS code, any_value(c.domain_id) AS domain,
  max(c.concept_id) AS source_id,
  coalesce(max(c.concept_id) FILTER (WHERE c.standard_concept = 'S'), 0) AS standard_id
FROM concept c JOIN system_vocabulary s USING (vocabulary_id)
GROUP BY ALL;

CREATE TEMP TABLE unit_meaning AS
SELECT concept_code AS code, max(concept_id) AS source_id,
  coalesce(max(concept_id) FILTER (WHERE standard_concept = 'S'), 0) AS standard_id
FROM concept WHERE vocabulary_id = 'UCUM' GROUP BY ALL;

CREATE TEMP TABLE field_id AS
SELECT coalesce(max(concept_id) FILTER (WHERE concept_name = 'measurement.measurement_id'), 0)
    AS measurement,
  coalesce(max(concept_id) FILTER (WHERE concept_name = 'observation.observation_id'), 0)
    AS observation,
  coalesce(max(concept_id) FILTER (WHERE vocabulary_id = 'Type Concept' AND concept_name = 'EHR'), 0)
    AS record_type
FROM concept;

-- What was not done is no row here: a count of these rows must count what was seen.
-- Nor is what was entered in error, or was replaced by an examination that is here too. A record
-- that was read twice is here once, for an id stands for one row.
CREATE TEMP TABLE replaced AS
SELECT DISTINCT amends AS examination FROM examinations
WHERE amends IS NOT NULL AND status <> 'entered-in-error';

CREATE TEMP TABLE seen AS
SELECT DISTINCT ON (id) * FROM (SELECT
  (md5_number_lower(examination || '|' || fact || '|' || coalesce(part, '')) >> 1)::BIGINT AS id,
  (md5_number_lower(examination || '|' || fact || '|value') >> 1)::BIGINT AS whole_id,
  (md5_number_lower(subject) >> 1)::BIGINT AS person_id,
  (md5_number_lower(examination) >> 1)::BIGINT AS visit_id,
  coalesce(m.standard_id, 0) AS concept_id,
  coalesce(m.source_id, 0) AS source_concept_id,
  -- The domain of the concept decides the table; without one, numbers are measurements.
  coalesce(m.domain, CASE WHEN f.number IS NULL THEN 'Observation' ELSE 'Measurement' END)
    = 'Measurement' AS measured,
  coalesce(f.part_code, f.code) || '|' || f.eye AS source_value,
  coalesce(v.standard_id, 0) AS value_concept_id,
  coalesce(u.standard_id, 0) AS unit_concept_id,
  coalesce(u.source_id, 0) AS unit_source_concept_id,
  f.*
FROM findings f
LEFT JOIN meaning m ON m.system = coalesce(f.part_system, f.code_system)
  AND m.code = coalesce(f.part_code, f.code)
LEFT JOIN meaning v ON v.system = f.value_system AND v.code = f.value_code
LEFT JOIN unit_meaning u ON u.code = f.unit
WHERE NOT f.derived AND f.absent IS NULL AND f.status <> 'entered-in-error'
  AND f.examination NOT IN (SELECT examination FROM replaced))
ORDER BY id, value, number;

CREATE TEMP TABLE whole AS
SELECT id, measured FROM seen WHERE part = 'value';

CREATE TABLE measurement AS
SELECT s.id AS measurement_id, person_id, concept_id AS measurement_concept_id,
  "time"::DATE AS measurement_date, "time" AS measurement_datetime,
  strftime("time", '%H:%M:%S') AS measurement_time,
  record_type AS measurement_type_concept_id, NULL::BIGINT AS operator_concept_id,
  number AS value_as_number, value_concept_id AS value_as_concept_id,
  unit_concept_id, NULL::DOUBLE AS range_low, NULL::DOUBLE AS range_high,
  NULL::BIGINT AS provider_id, visit_id AS visit_occurrence_id, NULL::BIGINT AS visit_detail_id,
  source_value AS measurement_source_value, source_concept_id AS measurement_source_concept_id,
  unit_name AS unit_source_value, unit_source_concept_id, value AS value_source_value,
  w.id AS measurement_event_id,
  CASE WHEN w.id IS NOT NULL THEN CASE WHEN w.measured THEN field_id.measurement
    ELSE field_id.observation END END AS meas_event_field_concept_id
FROM seen s CROSS JOIN field_id
LEFT JOIN whole w ON w.id = s.whole_id AND w.id <> s.id
WHERE s.measured;

-- The eye: as a qualifier of an observation, and as an observation linked to each measurement,
-- which has no place for one.
CREATE TEMP TABLE eye (eye VARCHAR, code VARCHAR);
INSERT INTO eye VALUES ('right', '362502000'), ('left', '362503005'), ('both', '362508001');

CREATE TEMP TABLE eye_meaning AS
SELECT e.eye, coalesce(m.standard_id, 0) AS concept_id
FROM eye e LEFT JOIN meaning m ON m.system = 'http://snomed.info/sct' AND m.code = e.code;

CREATE TABLE observation AS
SELECT s.id AS observation_id, person_id, s.concept_id AS observation_concept_id,
  "time"::DATE AS observation_date, "time" AS observation_datetime,
  record_type AS observation_type_concept_id, number AS value_as_number,
  value AS value_as_string, value_concept_id AS value_as_concept_id,
  e.concept_id AS qualifier_concept_id, unit_concept_id, NULL::BIGINT AS provider_id,
  visit_id AS visit_occurrence_id, NULL::BIGINT AS visit_detail_id,
  source_value AS observation_source_value, source_concept_id AS observation_source_concept_id,
  unit_name AS unit_source_value, eye AS qualifier_source_value, value AS value_source_value,
  w.id AS observation_event_id,
  CASE WHEN w.id IS NOT NULL THEN CASE WHEN w.measured THEN field_id.measurement
    ELSE field_id.observation END END AS obs_event_field_concept_id
FROM seen s JOIN eye_meaning e USING (eye) CROSS JOIN field_id
LEFT JOIN whole w ON w.id = s.whole_id AND w.id <> s.id
WHERE NOT s.measured
UNION ALL
SELECT (md5_number_lower(s.id || '|eye') >> 1)::BIGINT, person_id,
  coalesce((SELECT standard_id FROM meaning
    WHERE system = 'http://snomed.info/sct' AND code = '272741003'), 0),
  "time"::DATE, "time", record_type, NULL, eye, e.concept_id, NULL, 0, NULL, visit_id, NULL,
  '272741003', 0, NULL, NULL, eye, s.id, field_id.measurement
FROM seen s JOIN eye_meaning e USING (eye) CROSS JOIN field_id
WHERE s.measured;

CREATE TABLE person_keys AS
SELECT DISTINCT person_id, subject AS person_source_value FROM seen ORDER BY ALL;

CREATE TABLE visit_keys AS
SELECT DISTINCT visit_id AS visit_occurrence_id, examination AS visit_source_value FROM seen
ORDER BY ALL;
