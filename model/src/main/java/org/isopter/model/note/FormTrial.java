package org.isopter.model.note;

import java.time.OffsetDateTime;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import org.isopter.model.note.grammar.Headings;
import org.isopter.model.note.habit.Habits;
import org.isopter.model.note.habit.PossibleReading;
import org.isopter.model.note.habit.Readings;

/**
 * Tries forms that an item which was not read may have been meant in.
 *
 * @param extent which forms are tried
 */
record FormTrial(
    Headings headings, Optional<OffsetDateTime> performed, Habits habits, Extent extent) {

  /** Which forms are tried. */
  enum Extent {
    /** None: a form that is tried itself is read or not. */
    NOTHING,
    /** Those that an item may mean, of which habits may choose one. */
    MEANINGS,
    /** Also those that are only near to it, for whoever wrote it. */
    NEAR_FORMS
  }

  /** A longer item is no single thing that may mean this or that. */
  private static final int LONGEST_ASKED = 120;

  /** Returns the forms that an item may have been meant in and that are read to the last word. */
  List<PossibleReading> readings(String item) {
    if (extent == Extent.NOTHING || item.length() > LONGEST_ASKED) {
      return List.of();
    }
    List<PossibleReading> read =
        Readings.of(item, habits).stream().filter(reading -> isRead(reading.text())).toList();
    return read.size() > 1 || read.stream().anyMatch(PossibleReading::isCertain) ? read : List.of();
  }

  /** Returns the first form that is read whole, or what shows any form. */
  String nearest(Stream<String> forms) {
    return extent == Extent.NEAR_FORMS
        ? forms.filter(this::isRead).findFirst().orElse(Advice.START)
        : Advice.START;
  }

  private boolean isRead(String form) {
    Note note = new NoteReading(form, headings, performed, habits, Extent.NOTHING).read();
    return note.unread().isEmpty() && !note.facts().isEmpty();
  }
}
