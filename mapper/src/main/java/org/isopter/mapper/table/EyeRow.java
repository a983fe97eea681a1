package org.isopter.mapper.table;

import java.time.OffsetDateTime;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.isopter.model.derive.Derivations;
import org.isopter.model.derive.Derived;
import org.isopter.model.exam.Exam;
import org.isopter.model.exam.ExamView;
import org.isopter.model.exam.Fact;
import org.isopter.model.exam.FactKey;
import org.isopter.model.finding.EncodedValue;
import org.isopter.model.value.Quantity;
import org.isopter.model.value.Site;

/**
 * One eye of one examination: a row of the wide table.
 *
 * @param pooled the examination
 * @param eye the eye, or both together
 * @param cells what was found in each slot
 */
public record EyeRow(PooledExam pooled, Site eye, Map<String, Cell> cells) {

  /**
   * The fact of a slot that is shown and how many values there are: the earliest with a value; of
   * several at one time the first that was recorded. Without a value, the earliest reason.
   *
   * @param fact the fact
   * @param key its name in the long table
   * @param panel its value in first-order form
   * @param logMar its acuity in logMAR
   * @param count how many facts of the slot have a value
   */
  public record Cell(
      Fact<?> fact,
      String key,
      Optional<EncodedValue> panel,
      Optional<Quantity> logMar,
      int count) {

    Cell or(Cell later, OffsetDateTime performed) {
      boolean first =
          panel.isPresent() == later.panel.isPresent()
              ? !at(later, performed).isBefore(at(this, performed))
              : panel.isPresent();
      Cell kept = first ? this : later;
      return new Cell(kept.fact, kept.key, kept.panel, kept.logMar, count + later.count);
    }

    private static OffsetDateTime at(Cell cell, OffsetDateTime performed) {
      return cell.fact.at().orElse(performed);
    }
  }

  public EyeRow {
    cells = Map.copyOf(cells);
  }

  /** Returns a row for each eye, and one for both together where something was said of both. */
  public static List<EyeRow> of(PooledExam pooled) {
    ExamView view = pooled.exam().view();
    return of(pooled, view, Derivations.of(view));
  }

  /** Returns the rows of an examination, by its view, with the statements derived from it. */
  public static List<EyeRow> of(PooledExam pooled, ExamView view, List<Derived> derived) {
    Exam exam = pooled.exam();
    LogMars logMars = new LogMars(derived);
    List<EyeRow> rows = new ArrayList<>();
    for (Site eye : Site.values()) {
      Map<String, Cell> cells = new HashMap<>();
      view.eye(eye)
          .entries()
          .forEach(
              named ->
                  cells.merge(
                      ColumnGroup.of(named.fact()).name(),
                      cell(named.fact(), named.key(), logMars),
                      (one, next) -> one.or(next, exam.header().performed())));
      if (eye != Site.BOTH || !cells.isEmpty()) {
        rows.add(new EyeRow(pooled, eye, cells));
      }
    }
    return rows;
  }

  private static Cell cell(Fact<?> fact, FactKey key, LogMars logMars) {
    Optional<EncodedValue> panel = fact.panel();
    return new Cell(fact, key.text(), panel, logMars.of(key), panel.isPresent() ? 1 : 0);
  }

  Optional<Cell> cell(String slot) {
    return Optional.ofNullable(cells.get(slot));
  }
}
