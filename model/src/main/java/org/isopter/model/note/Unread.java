package org.isopter.model.note;

import org.isopter.model.value.Fault;

/**
 * A piece of a note that was not read.
 *
 * @param line the line on which the trouble lies, from 1
 * @param column its place in the line, from 1
 * @param text the whole item, word for word
 * @param why what stands in the way, in a sentence without its full stop
 * @param nearest an item that would be understood, or the word that may be meant
 */
public record Unread(int line, int column, String text, String why, String nearest) {

  /** Returns the place as a message names it: {@code line 2, column 5}. */
  public String place() {
    return "line " + line + ", column " + column;
  }

  /** Returns this as a fault of the note. */
  public Fault fault() {
    return new Fault(place(), "\"" + text + "\"", why, "nearest understood: " + nearest);
  }

  /** Returns this in one line for the writer of the note. */
  @Override
  public String toString() {
    return place() + ": \"" + text + "\" was not read: " + why + ". Nearest understood: " + nearest;
  }
}
