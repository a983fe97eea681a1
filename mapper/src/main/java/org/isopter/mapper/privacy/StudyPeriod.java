package org.isopter.mapper.privacy;

import java.sql.SQLException;
import java.time.LocalDate;
import java.time.temporal.ChronoUnit;
import java.util.OptionalLong;
import org.isopter.mapper.store.TableStore;
import org.isopter.mapper.table.ExaminationsTable;

/**
 * The first and the last day of the examinations of a pool, which often are no secret. All times of
 * a person are moved alike: a course of visits that fills the period has nowhere else to lie in it,
 * so that its days follow.
 */
public final class StudyPeriod {

  /** A course with less room than this is found to within a week, and a week of what is given. */
  private static final int ROOM = 21;

  /** Days of one week may be one visit, whose day the period alone tells. */
  private static final int A_WEEK = 6;

  private LocalDate first = LocalDate.MAX;
  private LocalDate last = LocalDate.MIN;

  /** Takes note of the day of an examination. */
  public void take(LocalDate day) {
    first = day.isBefore(first) ? day : first;
    last = day.isAfter(last) ? day : last;
  }

  /** Returns the most days that a course may span; empty where nothing was taken note of. */
  public OptionalLong longest() {
    return last.isBefore(first)
        ? OptionalLong.empty()
        : OptionalLong.of(Math.max(A_WEEK, ChronoUnit.DAYS.between(first, last) - ROOM));
  }

  /**
   * Counts the persons in a store whose visits fill the period.
   *
   * @throws SQLException when the database refuses it, for instance for a full disk
   */
  public long persons(TableStore store) throws SQLException {
    OptionalLong most = longest();
    return most.isEmpty()
        ? 0
        : (Long)
            store
                .ask("SELECT count(*) FROM (" + courses(most.getAsLong()) + ")")
                .get(0)
                .get(0)
                .orElse(0L);
  }

  /** Returns the persons in SQL whose visits span more days than these. */
  static String courses(long days) {
    return "SELECT subject FROM %s GROUP BY subject HAVING date_diff('day', min(\"time\"), max(\"time\")) > %d"
        .formatted(ExaminationsTable.NAME, days);
  }
}
