package org.isopter.model.note.habit;

import java.util.List;
import org.isopter.model.note.token.NotRead;
import org.isopter.model.note.token.Token;

/**
 * The words that may put a clause into another time, give it to another person, or leave it open:
 * last visit, mother, target, likely. A clause in which one stands is not read.
 */
public final class OtherTimes {

  private OtherTimes() {}

  public static boolean areIn(List<Token> clause) {
    for (int i = 0; i < clause.size(); i++) {
      if (StandardPhrases.OTHER.contains(clause.get(i).text())) {
        return true;
      }
      if (clause.get(i).is(":") && onlyUnknown(clause.subList(0, i))) {
        return true;
      }
    }
    return false;
  }

  /** Says whether what stands before a colon is a name that nothing is known of. */
  private static boolean onlyUnknown(List<Token> label) {
    return !label.isEmpty()
        && !label.get(0).is(NotRead.NO_PLACE)
        && UnknownSide.isUnknown(label.get(0));
  }
}
