package org.isopter.spark;

import java.io.Serializable;
import java.time.LocalDateTime;
import java.time.temporal.ChronoUnit;
import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import java.util.TreeSet;
import java.util.stream.Stream;
import org.apache.spark.sql.Row;
import org.isopter.mapper.pool.PoolPlan;
import org.isopter.mapper.privacy.RiskReport;
import org.isopter.mapper.table.Column;
import org.isopter.mapper.table.ExaminationsTable;
import org.isopter.mapper.table.FindingsTable;
import org.isopter.mapper.table.Table;
import org.isopter.model.catalogue.Catalogue;

/**
 * What is known of a person, from some of the rows or from all: the different values of each trait
 * and of all together, the times of the visits, the refractions, and the values of each sensitive
 * finding. An empty cell is a value of its own.
 */
final class Known implements Serializable {

  private static final long serialVersionUID = 1;

  private static final List<String> EYES = names(ExaminationsTable.table(Catalogue.standard()));
  private static final List<String> FINDINGS = names(FindingsTable.table());

  private static final List<Integer> TRAITS =
      PoolPlan.USUAL_TRAITS.stream().map(EYES::indexOf).toList();
  private static final List<Integer> REFRACTION =
      RiskReport.refraction(ExaminationsTable.table(Catalogue.standard())).stream()
          .map(EYES::indexOf)
          .toList();
  private static final int SUBJECT = EYES.indexOf("subject");
  private static final int TIME = EYES.indexOf("time");
  private static final int FINDING = FINDINGS.indexOf("finding");
  private static final int VALUE = FINDINGS.indexOf("value");

  private final List<Set<String>> traits = sets(TRAITS.size());
  private final TreeSet<String> together = new TreeSet<>();
  private final TreeSet<LocalDateTime> times = new TreeSet<>();
  private final TreeSet<String> refractions = new TreeSet<>();
  private final List<Set<String>> found = sets(RiskReport.SENSITIVE.size());

  private Known() {}

  private static List<String> names(Table<?> table) {
    return table.columns().stream().<String>map(Column::name).toList();
  }

  private static List<Set<String>> sets(int count) {
    return new ArrayList<>(Stream.<Set<String>>generate(TreeSet::new).limit(count).toList());
  }

  /** Returns the person of a row of the wide or of the long table. */
  static String person(Row row) {
    return row.getString(SUBJECT);
  }

  /** Returns the usual traits in a row of the wide table; empty text for what is not known. */
  static List<String> traits(Row row) {
    return TRAITS.stream().map(at -> row.isNullAt(at) ? "" : row.get(at).toString()).toList();
  }

  /** Returns what a row of the wide table tells. */
  static Known ofEye(Row row) {
    Known known = new Known();
    for (int i = 0; i < TRAITS.size(); i++) {
      known.traits.get(i).add(String.valueOf(row.get(TRAITS.get(i))));
    }
    known.together.add(TRAITS.stream().map(row::get).map(String::valueOf).toList().toString());
    known.times.add((LocalDateTime) row.get(TIME));
    known.refractions.add(
        REFRACTION.stream().map(row::get).map(String::valueOf).toList().toString());
    return known;
  }

  /** Says whether a row of the long table is of a sensitive finding. */
  static boolean isSensitive(Row row) {
    return RiskReport.SENSITIVE.contains(row.getString(FINDING));
  }

  /** Returns what a row of the long table tells of a sensitive finding. */
  static Known ofFinding(Row row) {
    Known known = new Known();
    known
        .found
        .get(RiskReport.SENSITIVE.indexOf(row.getString(FINDING)))
        .add(String.valueOf(row.get(VALUE)));
    return known;
  }

  /** Adds what other rows tell of the same person. */
  Known plus(Known other) {
    for (int i = 0; i < traits.size(); i++) {
      traits.get(i).addAll(other.traits.get(i));
    }
    together.addAll(other.together);
    times.addAll(other.times);
    refractions.addAll(other.refractions);
    for (int i = 0; i < found.size(); i++) {
      found.get(i).addAll(other.found.get(i));
    }
    return this;
  }

  /** Returns the values of a trait, by its place among the usual ones. */
  String trait(int place) {
    return traits.get(place).toString();
  }

  /** Returns the values of all traits that stand together in the rows of the person. */
  String traits() {
    return together.toString();
  }

  /** Returns how many visits there were and how far apart, in days. */
  String visits() {
    return times.stream()
        .map(time -> ChronoUnit.DAYS.between(times.first().toLocalDate(), time.toLocalDate()))
        .toList()
        .toString();
  }

  String refractions() {
    return refractions.toString();
  }

  /** Returns the values of a finding, by its place among the sensitive ones. */
  String found(int place) {
    return found.get(place).toString();
  }
}
