package org.isopter.mapper.describe;

import static org.isopter.mapper.describe.Saying.BEHIND;
import static org.isopter.mapper.describe.Saying.COUNT;
import static org.isopter.mapper.describe.Saying.MIDDLE;
import static org.isopter.mapper.describe.Saying.OF_ONE;
import static org.isopter.mapper.describe.Saying.QUARTER;
import static org.isopter.mapper.describe.Saying.SHARED;
import static org.isopter.mapper.describe.Saying.WORD;

import java.util.List;

/**
 * What is asked first of a pool, and what each column of the answer says. The last one, which is
 * shown to nobody, says how many persons are behind a row.
 */
enum Question {
  SIZE(
      "How much there is",
      "",
      """
      SELECT count(DISTINCT subject) AS persons, count(DISTINCT examination) AS examinations,
        count(DISTINCT (examination, fact)) FILTER (WHERE NOT derived) AS facts,
        count(DISTINCT (examination, fact)) FILTER (WHERE derived) AS "derived statements",
        count(*) AS "rows of findings", count(DISTINCT subject) AS behind
      FROM findings""",
      COUNT,
      COUNT,
      COUNT,
      COUNT,
      COUNT,
      BEHIND),
  STATUS(
      "How far the records have come",
      "What was entered in error, what a later examination here replaces and what is there more"
          + " than once is in all counts below.",
      """
      SELECT status, count(DISTINCT examination) AS examinations,
        count(DISTINCT examination) FILTER (WHERE examination IN (SELECT amends FROM examinations))
          AS replaced,
        count(DISTINCT examination) FILTER (WHERE examination IN (SELECT examination
          FROM examinations GROUP BY examination, eye HAVING count(*) > 1)) AS "more than once",
        count(DISTINCT subject) AS behind
      FROM examinations GROUP BY status ORDER BY status""",
      WORD,
      COUNT,
      COUNT,
      COUNT,
      BEHIND),
  COUNTS(
      "What was examined",
      "Each fact is counted once, whatever parts it has.",
      """
      SELECT finding, count(*) FILTER (WHERE eye = 'right') AS "right",
        count(*) FILTER (WHERE eye = 'left') AS "left",
        count(*) FILTER (WHERE eye = 'both') AS "both",
        count(*) FILTER (WHERE found) AS found, count(*) FILTER (WHERE NOT found) AS "no value",
        count(DISTINCT subject) AS behind
      FROM (SELECT finding, eye, subject, examination, fact, bool_or(part IS NOT NULL) AS found
        FROM findings WHERE NOT derived GROUP BY ALL)
      GROUP BY finding ORDER BY finding""",
      WORD,
      COUNT,
      COUNT,
      COUNT,
      COUNT,
      COUNT,
      BEHIND),
  ABSENT(
      "Why there was no value",
      "Not done is not normal: these are in no mean and no share below.",
      """
      SELECT finding, coalesce(part, 'whole') AS part, absent AS reason, count(*) AS times,
        count(DISTINCT subject) AS behind
      FROM findings WHERE absent IS NOT NULL GROUP BY ALL ORDER BY finding, part, times DESC""",
      WORD,
      WORD,
      WORD,
      COUNT,
      BEHIND),
  STEPS(
      "What was examined of the usual steps",
      "Eyes of examinations, by the usual order. Not recorded says neither that it was examined nor"
          + " that it was not.",
      """
      SELECT step, count(*) FILTER (WHERE state = 'examined') AS examined,
        count(*) FILTER (WHERE state = 'not-examined') AS "not examined",
        count(*) FILTER (WHERE state = 'not-recorded') AS "not recorded",
        count(DISTINCT subject) AS behind
      FROM steps GROUP BY step ORDER BY step""",
      WORD,
      COUNT,
      COUNT,
      COUNT,
      BEHIND),
  ACUITIES(
      "How acuities and limits got their numbers",
      "Those without one are in no mean below, which makes it too good where they are low. A limit"
          + " that a pressure or an acuity lies beyond is no number of theirs.",
      """
      SELECT finding, number_rule AS rule, count(number) AS "with number",
        count(*) - count(number) AS without, count(DISTINCT subject) AS behind
      FROM findings WHERE NOT derived AND number_rule IS NOT NULL GROUP BY ALL
      ORDER BY finding, count(*) DESC, rule""",
      WORD,
      WORD,
      COUNT,
      COUNT,
      BEHIND),
  METHODS(
      "By which techniques",
      "Each fact is counted once; - is one that does not say.",
      """
      SELECT finding, coalesce(method, '-') AS technique, count(*) AS facts,
        count(DISTINCT subject) AS behind
      FROM (SELECT DISTINCT subject, examination, fact, finding, method FROM findings
        WHERE NOT derived AND absent IS NULL AND finding IN
          (SELECT finding FROM findings WHERE method IS NOT NULL AND NOT derived))
      GROUP BY ALL ORDER BY finding, facts DESC, technique""",
      WORD,
      WORD,
      COUNT,
      BEHIND),
  NUMBERS(
      "How the numbers are spread",
      "In the usual unit; acuities in logMAR, where less is better. By what was worn or lit, by the"
          + " way of a deviation or a prism, by technique, and by chart. Axes and clock hours have no"
          + " mean and no quarters: 2 and 178 degrees lie close together. Of refractions the power"
          + " vector has a mean that does not depend on how the cylinder is written.",
      """
      WITH chart AS (SELECT examination, fact, any_value(value) AS chart FROM findings
        WHERE part = 'chart' GROUP BY ALL),
      numbers AS (SELECT f.*, CASE WHEN part = 'value' THEN chart END AS chart,
          CASE WHEN part NOT IN ('axis', 'steep-axis', 'clock-hour') THEN number END AS linear
        FROM measured f LEFT JOIN chart USING (examination, fact))
      SELECT finding, part, condition, method AS technique, chart, eye, unit_name AS unit,
        count(*) AS n, round(avg(linear), 3) AS mean, round(stddev_samp(linear), 3) AS sd,
        round(min(number), 3) AS least,
        round(quantile_cont(linear, 0.25), 3) AS "lower quarter",
        round(median(linear), 3) AS median,
        round(quantile_cont(linear, 0.75), 3) AS "upper quarter", round(max(number), 3) AS most,
        count(DISTINCT subject) AS behind
      FROM numbers GROUP BY finding, part, condition, method, chart, eye, unit_name
      ORDER BY finding, part, condition, technique, chart, eye DESC, unit""",
      WORD,
      WORD,
      WORD,
      WORD,
      WORD,
      WORD,
      WORD,
      COUNT,
      SHARED,
      SHARED,
      OF_ONE,
      QUARTER,
      MIDDLE,
      QUARTER,
      OF_ONE,
      BEHIND),
  ANSWERS(
      "Which answers were given",
      "",
      """
      SELECT finding, part, eye, value AS answer, count(*) AS times,
        count(DISTINCT subject) AS behind
      FROM findings WHERE NOT derived AND value_code IS NOT NULL AND notation IS NULL
      GROUP BY ALL ORDER BY finding, part, eye DESC, times DESC, answer""",
      WORD,
      WORD,
      WORD,
      WORD,
      COUNT,
      BEHIND),
  UNITS(
      "In which units and notations it was recorded",
      "",
      """
      SELECT finding, part, coalesce(notation, unit) AS "unit or notation", count(*) AS times,
        count(DISTINCT subject) AS behind
      FROM (SELECT subject, finding, part, notation, regexp_extract(value, '^[-+]?[0-9./]+ (.+)$', 1) AS unit
        FROM findings WHERE NOT derived AND (number IS NOT NULL OR notation IS NOT NULL))
      WHERE coalesce(notation, unit) <> '' GROUP BY ALL ORDER BY finding, part, times DESC""",
      WORD,
      WORD,
      WORD,
      COUNT,
      BEHIND),
  RULES(
      "By which rules foreign findings were translated",
      "",
      """
      SELECT rule, count(DISTINCT (examination, fact)) AS facts, count(DISTINCT subject) AS behind
      FROM (SELECT subject, examination, fact, unnest(string_split(rules, ' ')) AS rule FROM findings
        WHERE rules IS NOT NULL)
      GROUP BY rule ORDER BY facts DESC, rule""",
      WORD,
      COUNT,
      BEHIND),
  FAR_OUT(
      "Numbers to look at",
      "Beyond three times the distance between the quarters (Tukey 1977, \"far out\"), where there"
          + " are twenty numbers or more; at most two hundred are listed. Far out is not wrong, and"
          + " wrong need not be far out.",
      """
      WITH fence AS (SELECT finding, part, unit, quantile_cont(number, 0.25) AS q1,
          quantile_cont(number, 0.75) AS q3
        FROM findings WHERE NOT derived AND number IS NOT NULL
          AND part NOT IN ('axis', 'steep-axis', 'clock-hour') GROUP BY ALL
        HAVING count(*) >= 20 AND q3 > q1)
      SELECT f.finding, f.part, f.eye, f.value, round(f.number, 3) AS number, f.unit_name AS unit, o.source, o.line,
        1 AS behind
      FROM findings f JOIN fence USING (finding, part, unit)
        LEFT JOIN (SELECT examination, min(source) AS source, min(line) AS line FROM origins
          GROUP BY examination) o USING (examination)
      WHERE NOT f.derived AND (f.number < q1 - 3 * (q3 - q1) OR f.number > q3 + 3 * (q3 - q1))
      ORDER BY f.finding, f.part, abs(f.number - (q1 + q3) / 2) DESC, o.source, o.line, f.examination, f.fact LIMIT 200""",
      WORD,
      WORD,
      WORD,
      OF_ONE,
      OF_ONE,
      WORD,
      OF_ONE,
      OF_ONE,
      BEHIND);

  /**
   * The numbers. An amount that has a way, such as inwards or outwards, stands beside no amount of
   * another.
   */
  private static final String MEASURED =
      """
      (SELECT n.* REPLACE (nullif(concat_ws(', ', condition, way), '') AS condition)
        FROM findings n LEFT JOIN (SELECT examination, fact, any_value(value) AS way,
            CASE part WHEN 'horizontal-base' THEN 'horizontal-prism'
              WHEN 'vertical-base' THEN 'vertical-prism' ELSE 'deviation-amount' END AS part
          FROM findings WHERE finding = 'ocular-deviation' AND part = 'value'
            OR part IN ('horizontal-base', 'vertical-base')
          GROUP BY ALL) USING (examination, fact, part)
        WHERE number IS NOT NULL AND (NOT derived OR finding = 'power-vector'))""";

  private final String title;
  private final String remark;
  private final String sql;
  private final List<Saying> sayings;

  Question(String title, String remark, String sql, Saying... sayings) {
    this.title = title;
    this.remark = remark;
    this.sql = sql;
    this.sayings = List.of(sayings);
  }

  String title() {
    return title;
  }

  String remark() {
    return remark;
  }

  /** Returns what each column of the answer says, in their order. */
  List<Saying> sayings() {
    return sayings;
  }

  String sql() {
    return sql.replace("measured", MEASURED);
  }

  /**
   * Asks for the numbers of each finding, part, condition and eye, at most so many of each. What
   * only says how something was shown is in the listings alone.
   */
  static String numbers(int most) {
    return """
        SELECT finding, part, eye, unit_name, list(number), coalesce(condition, '')
        FROM (SELECT *, row_number() OVER (PARTITION BY finding, part, condition, eye, unit_name
            ORDER BY hash(examination, fact, value)) AS place
          FROM measured
          WHERE part NOT IN ('distance', 'letters', 'edition', 'shown-at'))
        WHERE place <= %d GROUP BY finding, part, condition, eye, unit_name
        HAVING min(number) < max(number) ORDER BY finding, part, condition, unit_name, eye"""
        .formatted(most)
        .replace("measured", MEASURED);
  }

  /** Asks how often each answer of each finding and part was given. */
  static String answers() {
    return """
        SELECT finding, part, value, count(*) AS times, count(DISTINCT subject) AS behind
        FROM findings WHERE NOT derived AND value_code IS NOT NULL AND notation IS NULL
        GROUP BY ALL ORDER BY finding, part, times DESC, value""";
  }
}
