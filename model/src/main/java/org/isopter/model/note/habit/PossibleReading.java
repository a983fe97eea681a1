package org.isopter.model.note.habit;

import org.apiguardian.api.API;
import org.apiguardian.api.API.Status;

/**
 * One thing that an item may mean, written so that it is read.
 *
 * @param kind what is not clear: eyes, both, notation, light, plates, loss, margin, red, time or
 *     denial
 * @param choice what this reading chooses, in a word or two
 * @param text the item in a form that is read to the last word
 */
@API(status = Status.STABLE)
public record PossibleReading(String kind, String choice, String text) {

  /** The choice of what is the same for either order of the eyes. */
  static final String EITHER = "either order";

  /** Says whether there is nothing to choose: 14/14 is the same from right to left. */
  public boolean isCertain() {
    return choice.equals(EITHER);
  }
}
