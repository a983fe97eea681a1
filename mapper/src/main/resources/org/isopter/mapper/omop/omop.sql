-- Rows of the OMOP Common Data Model 5.4 from the tables of a pool and a vocabulary.
-- Ids count from 1 in the order of the keys, which are keyed hashes: they tell nothing of the input.

CREATE TEMP TABLE concept AS
SELECT concept_id::INTEGER AS concept_id, concept_name, domain_id, vocabulary_id, concept_code,
  coalesce(standard_concept, '') = 'S' AND coalesce(invalid_reason, '') = '' AS standard
FROM vocabulary_file
WHERE vocabulary_id IN
  ('LOINC', 'SNOMED', 'UCUM', 'CDM', 'Type Concept', 'Visit', 'Gender');

-- A source concept stands for itself where it is standard, else for the one that it maps to. One
-- that maps to several would need as many rows, of which none holds the value: it gets none.
CREATE TEMP TABLE mapped AS
SELECT concept_id_1::INTEGER AS concept_id, min(concept_id_2::INTEGER) AS standard_id
FROM relationship_file JOIN concept t ON t.concept_id = concept_id_2::INTEGER AND t.standard
WHERE relationship_id = 'Maps to' AND coalesce(relationship_file.invalid_reason, '') = ''
GROUP BY ALL HAVING count(DISTINCT concept_id_2) = 1;

CREATE TEMP TABLE meaning AS
SELECT CASE c.vocabulary_id WHEN 'LOINC' THEN 'http://loinc.org'
    WHEN 'SNOMED' THEN 'http://snomed.info/sct' ELSE c.vocabulary_id END AS system,
  c.concept_code AS code, max(c.concept_id) AS source_id,
  coalesce(max(c.concept_id) FILTER (WHERE c.standard), max(m.standard_id), 0) AS standard_id,
  coalesce(max(c.domain_id) FILTER (WHERE c.standard), max(t.domain_id)) AS domain
FROM concept c LEFT JOIN mapped m USING (concept_id)
  LEFT JOIN concept t ON t.concept_id = m.standard_id
GROUP BY ALL;

CREATE TEMP TABLE named AS
SELECT coalesce(max(concept_id) FILTER (WHERE concept_name = 'measurement.measurement_id'), 0)
    AS measurement,
  coalesce(max(concept_id) FILTER (WHERE concept_name = 'observation.observation_id'), 0)
    AS observation,
  coalesce(max(concept_id)
    FILTER (WHERE concept_name = 'condition_occurrence.condition_occurrence_id'), 0) AS condition,
  coalesce(max(concept_id) FILTER (WHERE vocabulary_id = 'Type Concept' AND concept_name = 'EHR'), 0)
    AS record_type,
  coalesce(max(concept_id) FILTER (WHERE vocabulary_id = 'SNOMED' AND concept_code = '272741003'
    AND standard), 0) AS laterality,
  max(concept_id) FILTER (WHERE domain_id = 'Meas Value Operator' AND concept_name = '>') AS above,
  max(concept_id) FILTER (WHERE domain_id = 'Meas Value Operator' AND concept_name = '<') AS below
FROM concept;

-- A limit that the value lies beyond is a number only beside an operator: without one in the
-- vocabulary it stands in the text alone, which says on which side the value lies.
CREATE TEMP TABLE beyond AS
SELECT DISTINCT f.examination, f.fact, 'value' AS part, s.value || CASE
    WHEN s.part = 'side-of-line' THEN ' than ' ELSE ' ' END AS side,
  CASE WHEN s.value IN ('above', 'worse') THEN named.above ELSE named.below END AS operator,
  CASE WHEN operator IS NOT NULL THEN f.number_line END AS bound,
  CASE WHEN f.finding = 'pressure-beyond-scale' THEN 'mm[Hg]' ELSE '{logMAR}' END AS bound_unit
FROM findings f JOIN findings s ON s.examination = f.examination AND s.fact = f.fact
  AND s.part IN ('beyond-limit', 'side-of-line')
CROSS JOIN named WHERE f.number_rule = 'limit';

-- What was not done is no row here: a count of these rows must count what was seen.
-- Nor is what was entered in error, or was replaced by an examination that is here too. A record
-- that was read twice is here once, for an id stands for one row.
CREATE TEMP TABLE replaced AS
SELECT DISTINCT amends AS examination FROM examinations
WHERE amends IS NOT NULL AND status <> 'entered-in-error';

CREATE TEMP TABLE visited AS
SELECT examination, any_value(subject) AS subject, any_value("time") AS "time",
  any_value(setting) AS setting, any_value(age) AS age, any_value(sex) AS sex
FROM examinations
WHERE status <> 'entered-in-error' AND examination NOT IN (SELECT examination FROM replaced)
GROUP BY examination;

-- The model has no person without a year of birth. An age that stands for all greater ones gives
-- the latest year that it may be.
CREATE TEMP TABLE somebody AS
SELECT subject, min(year("time") - age)::INTEGER AS born,
  CASE WHEN count(DISTINCT sex) = 1 THEN min(sex) END AS sex
FROM visited GROUP BY subject;

CREATE TABLE person_keys AS
SELECT row_number() OVER (ORDER BY subject)::INTEGER AS person_id, subject AS person_key
FROM somebody WHERE born IS NOT NULL ORDER BY subject;

CREATE TABLE visit_keys AS
SELECT row_number() OVER (ORDER BY examination)::INTEGER AS visit_occurrence_id,
  examination AS examination_key
FROM visited JOIN person_keys ON person_key = subject ORDER BY examination;

CREATE TABLE left_out AS
SELECT 'age-not-known' AS reason, count(DISTINCT subject) AS persons, count(*) AS examinations
FROM visited WHERE subject NOT IN (SELECT person_key FROM person_keys);

CREATE TABLE person AS
SELECT person_id, coalesce(g.standard_id, 0) AS gender_concept_id, born AS year_of_birth,
  NULL::INTEGER AS month_of_birth, NULL::INTEGER AS day_of_birth,
  NULL::TIMESTAMP AS birth_datetime, 0 AS race_concept_id, 0 AS ethnicity_concept_id,
  NULL::INTEGER AS location_id, NULL::INTEGER AS provider_id, NULL::INTEGER AS care_site_id,
  left(person_key, 50) AS person_source_value, sex AS gender_source_value,
  NULL::INTEGER AS gender_source_concept_id, NULL::VARCHAR AS race_source_value,
  NULL::INTEGER AS race_source_concept_id, NULL::VARCHAR AS ethnicity_source_value,
  NULL::INTEGER AS ethnicity_source_concept_id
FROM person_keys JOIN somebody ON subject = person_key
LEFT JOIN meaning g ON g.system = 'Gender'
  AND g.code = CASE sex WHEN 'male' THEN 'M' WHEN 'female' THEN 'F' END
ORDER BY person_id;

-- Parts of one fact hang on the first of its rows: its value, or else the first of its parts.
CREATE TEMP TABLE seen AS
SELECT *, first_value(id) OVER (PARTITION BY examination, fact ORDER BY id) AS whole_id,
  first_value(kind) OVER (PARTITION BY examination, fact ORDER BY id) AS whole_kind
FROM (
  SELECT row_number() OVER (ORDER BY f.examination, f.fact, f.part <> 'value', f.part)::INTEGER AS id,
    coalesce(m.standard_id, 0) AS concept_id, m.source_id AS source_concept_id,
    CASE WHEN m.domain = 'Measurement'
        OR m.domain IS NULL AND coalesce(f.number, b.bound) IS NOT NULL THEN 'measurement'
      WHEN m.domain = 'Condition' AND f.part = 'value' AND a.code IS NOT NULL THEN 'condition'
      ELSE 'observation' END AS kind,
    left(coalesce(f.part_code, f.code) || '|' || f.eye, 50) AS source_value,
    CASE WHEN f.value_code IS NOT NULL THEN coalesce(v.standard_id, 0) END AS value_concept_id,
    CASE WHEN u.code IS NOT NULL OR f.unit IS NOT NULL THEN coalesce(u.standard_id, 0) END
      AS unit_concept_id,
    u.source_id AS unit_source_concept_id,
    f.* REPLACE (coalesce(f.number, b.bound) AS number,
      coalesce(f.unit_name, CASE WHEN b.bound IS NOT NULL THEN b.bound_unit END) AS unit_name,
      coalesce(b.side, '') || f.value AS value),
    CASE WHEN b.bound IS NOT NULL THEN b.operator END AS operator,
    p.person_id, k.visit_occurrence_id
  FROM (SELECT DISTINCT ON (examination, fact, part) * FROM findings
      WHERE NOT derived AND absent IS NULL ORDER BY examination, fact, part, value, number) f
  JOIN person_keys p ON p.person_key = f.subject
  JOIN visit_keys k ON k.examination_key = f.examination
  LEFT JOIN meaning m ON m.system = coalesce(f.part_system, f.code_system)
    AND m.code = coalesce(f.part_code, f.code)
  LEFT JOIN meaning v ON v.system = f.value_system AND v.code = f.value_code
  LEFT JOIN beyond b ON b.examination = f.examination AND b.fact = f.fact AND b.part = f.part
  LEFT JOIN meaning u ON u.system = 'UCUM'
    AND u.code = coalesce(f.unit, CASE WHEN b.bound IS NOT NULL THEN b.bound_unit END)
  LEFT JOIN answer_code a ON a.finding = f.finding AND a.system = f.code_system AND a.code = f.code);

CREATE TABLE visit_occurrence AS
SELECT k.visit_occurrence_id, person_id, coalesce(c.standard_id, 0) AS visit_concept_id,
  least(v."time", min(s."time"))::DATE AS visit_start_date,
  least(v."time", min(s."time")) AS visit_start_datetime,
  greatest(v."time", max(s."time"))::DATE AS visit_end_date,
  greatest(v."time", max(s."time")) AS visit_end_datetime,
  record_type AS visit_type_concept_id, NULL::INTEGER AS provider_id,
  NULL::INTEGER AS care_site_id, v.setting AS visit_source_value,
  NULL::INTEGER AS visit_source_concept_id, NULL::INTEGER AS admitted_from_concept_id,
  NULL::VARCHAR AS admitted_from_source_value, NULL::INTEGER AS discharged_to_concept_id,
  NULL::VARCHAR AS discharged_to_source_value,
  lag(k.visit_occurrence_id) OVER (PARTITION BY person_id
    ORDER BY v."time", k.visit_occurrence_id) AS preceding_visit_occurrence_id
FROM visited v JOIN visit_keys k ON k.examination_key = v.examination
JOIN person_keys ON person_key = v.subject CROSS JOIN named
LEFT JOIN (SELECT examination, "time" FROM seen) s ON s.examination = v.examination
LEFT JOIN meaning c ON c.system = 'Visit'
  AND c.code = CASE v.setting WHEN 'clinic' THEN 'OP' WHEN 'ward' THEN 'IP'
    WHEN 'emergency' THEN 'ER' END
GROUP BY k.visit_occurrence_id, person_id, c.standard_id, v."time", v.setting, record_type
ORDER BY k.visit_occurrence_id;

CREATE TABLE observation_period AS
SELECT person_id AS observation_period_id, person_id,
  min(visit_start_date) AS observation_period_start_date,
  max(visit_end_date) AS observation_period_end_date,
  any_value(record_type) AS period_type_concept_id
FROM visit_occurrence CROSS JOIN named GROUP BY person_id ORDER BY person_id;

-- A code of a disorder or a finding makes a condition only where it is that of an answer. One that a
-- finding has beside every answer, also that there is none, is the name of what was looked at.
CREATE TABLE condition_occurrence AS
SELECT id AS condition_occurrence_id, person_id, concept_id AS condition_concept_id,
  "time"::DATE AS condition_start_date, "time" AS condition_start_datetime,
  NULL::DATE AS condition_end_date, NULL::TIMESTAMP AS condition_end_datetime,
  record_type AS condition_type_concept_id, NULL::INTEGER AS condition_status_concept_id,
  NULL::VARCHAR AS stop_reason, NULL::INTEGER AS provider_id, visit_occurrence_id,
  NULL::INTEGER AS visit_detail_id, left(source_value || '|' || value, 50) AS condition_source_value,
  source_concept_id AS condition_source_concept_id, NULL::VARCHAR AS condition_status_source_value
FROM seen CROSS JOIN named WHERE kind = 'condition' ORDER BY id;

CREATE TABLE measurement AS
SELECT id AS measurement_id, person_id, concept_id AS measurement_concept_id,
  "time"::DATE AS measurement_date, "time" AS measurement_datetime,
  CASE WHEN "time" <> "time"::DATE THEN strftime("time", '%H:%M:%S') END AS measurement_time,
  record_type AS measurement_type_concept_id, operator AS operator_concept_id,
  number::DECIMAL(18, 6) AS value_as_number, value_concept_id AS value_as_concept_id,
  unit_concept_id, NULL::DECIMAL(18, 6) AS range_low, NULL::DECIMAL(18, 6) AS range_high,
  NULL::INTEGER AS provider_id, visit_occurrence_id, NULL::INTEGER AS visit_detail_id,
  source_value AS measurement_source_value, source_concept_id AS measurement_source_concept_id,
  unit_name AS unit_source_value, unit_source_concept_id, left(value, 50) AS value_source_value,
  CASE WHEN whole_id <> id THEN whole_id END AS measurement_event_id,
  CASE WHEN whole_id <> id THEN CASE whole_kind WHEN 'measurement' THEN named.measurement
    WHEN 'condition' THEN named.condition ELSE named.observation END END
    AS meas_event_field_concept_id
FROM seen CROSS JOIN named WHERE kind = 'measurement' ORDER BY id;

-- What a row has no place for stands in an observation linked to it: the eye of a measurement or
-- condition, the technique of any.
CREATE TEMP TABLE beside AS
SELECT id, kind, 'eye' AS what,
  CASE WHEN kind = 'condition' AND value IN ('right', 'left') THEN value ELSE eye END AS word
FROM seen WHERE kind <> 'observation'
UNION ALL
SELECT id, kind, 'method', method FROM seen WHERE method IS NOT NULL AND id = whole_id;

CREATE TEMP TABLE word_meaning AS
SELECT w.finding, w.word, any_value(m.standard_id) AS concept_id
FROM word_code w JOIN meaning m USING (system, code) GROUP BY ALL;

CREATE TABLE observation AS
SELECT id AS observation_id, person_id, s.concept_id AS observation_concept_id,
  "time"::DATE AS observation_date, "time" AS observation_datetime,
  record_type AS observation_type_concept_id, number::DECIMAL(18, 6) AS value_as_number,
  left(value, 60) AS value_as_string, value_concept_id AS value_as_concept_id,
  coalesce(e.concept_id, 0) AS qualifier_concept_id, unit_concept_id,
  NULL::INTEGER AS provider_id, visit_occurrence_id, NULL::INTEGER AS visit_detail_id,
  source_value AS observation_source_value, source_concept_id AS observation_source_concept_id,
  unit_name AS unit_source_value, eye AS qualifier_source_value,
  left(value, 50) AS value_source_value,
  CASE WHEN whole_id <> id THEN whole_id END AS observation_event_id,
  CASE WHEN whole_id <> id THEN CASE whole_kind WHEN 'measurement' THEN named.measurement
    WHEN 'condition' THEN named.condition ELSE named.observation END END
    AS obs_event_field_concept_id
FROM seen s CROSS JOIN named
LEFT JOIN word_meaning e ON e.finding = '' AND e.word = eye
WHERE kind = 'observation'
UNION ALL
SELECT (SELECT max(id) FROM seen) + row_number() OVER (ORDER BY b.id, what)::INTEGER, person_id,
  CASE what WHEN 'eye' THEN laterality ELSE 0 END, "time"::DATE, "time", record_type, NULL,
  left(b.word, 60), coalesce(e.concept_id, 0), NULL, NULL, NULL, visit_occurrence_id, NULL,
  CASE what WHEN 'eye' THEN '272741003' ELSE what END, NULL, NULL, NULL, left(b.word, 50), b.id,
  CASE b.kind WHEN 'measurement' THEN named.measurement WHEN 'condition' THEN named.condition
    ELSE named.observation END
FROM beside b JOIN seen s USING (id) CROSS JOIN named
LEFT JOIN word_meaning e ON e.word = b.word
  AND e.finding = CASE what WHEN 'eye' THEN '' ELSE s.finding END
ORDER BY observation_id;
