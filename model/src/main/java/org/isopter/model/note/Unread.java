package org.isopter.model.note;

import java.util.List;
import java.util.stream.Collectors;
import org.isopter.model.note.habit.PossibleReading;
import org.isopter.model.value.Fault;

/**
 * A piece of a note that was not read.
 *
 * @param start where the item starts in the note, counted in characters from 0
 * @param line the line on which the trouble lies, from 1
 * @param column its place in the line, from 1
 * @param text the whole item, word for word
 * @param why what stands in the way, in a sentence without its full stop
 * @param nearest a form that is read, as near as one is known
 * @param readings what it may mean, each in a form that is read; none where that is not known
 */
public record Unread(
    int start,
    int line,
    int column,
    String text,
    String why,
    String nearest,
    List<PossibleReading> readings) {

  public Unread {
    readings = List.copyOf(readings);
  }

  /** Says whether it may mean one of several things that can be told apart by asking. */
  public boolean isQuestion() {
    return readings.size() > 1;
  }

  /** Returns this with another form as the nearest that is understood. */
  Unread nearest(String form) {
    return new Unread(start, line, column, text, why, form, readings);
  }

  /** Returns the place as a message names it: {@code line 2, column 5}. */
  public String place() {
    return "line " + line + ", column " + column;
  }

  /** Returns this as a fault of the note. */
  public Fault fault() {
    return new Fault(place(), "\"" + text + "\"", why, form());
  }

  /** Returns what to write instead: its readings, else a near form, else items of that form. */
  public String advice() {
    if (isQuestion()) {
      return "It may mean: "
          + readings.stream().map(PossibleReading::text).collect(Collectors.joining(" or "));
    }
    String form = form();
    return Character.toUpperCase(form.charAt(0)) + form.substring(1);
  }

  /** Returns the nearest form, or an example where none is near: its values are not of the note. */
  public String form() {
    if (nearest.equals(Advice.START)) {
      return "items are written like these: " + nearest;
    }
    return Advice.isExample(nearest, text) || Advice.saysOther(nearest, text)
        ? "example of the form, with values of its own: " + nearest
        : "nearest understood: " + nearest;
  }

  /** Returns this in one line for the writer of the note. */
  @Override
  public String toString() {
    return place() + ": \"" + text + "\" was not read: " + why + ". " + advice();
  }
}
