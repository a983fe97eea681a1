package org.isopter.model.note.grammar;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.isopter.model.note.token.NotRead;
import org.isopter.model.note.token.Token;

/**
 * An item in which commas part the eyes: {@code 4 mm OD reactive, 7 mm OS fixed}. Between two
 * commas stands one side, and all that stands around it is told of that eye.
 *
 * @param head the conditions before the first value, which hold for each eye
 * @param groups the eyes, each with what stands in its part
 */
record CommaParts(Said head, List<Scan.Group> groups) {

  /** Returns the parts; empty where they are not as many as the eyes, or one tells nothing. */
  static Optional<CommaParts> of(Said head, List<Scan.Group> groups, List<Token> commas)
      throws NotRead {
    if (groups.size() < 2 || groups.size() != commas.size() + 1 || !head.hasValues()) {
      return Optional.empty();
    }
    Said shared = head.conditionsBeforeValues();
    List<Scan.Group> parts = new ArrayList<>();
    for (int i = 0; i < groups.size(); i++) {
      int from = i == 0 ? 0 : commas.get(i - 1).start();
      int to = i == commas.size() ? Integer.MAX_VALUE : commas.get(i).start();
      Scan.Group eye = groups.get(i);
      Said said = head.without(shared).between(from, to);
      for (Scan.Group group : groups) {
        said.putAll(group.said().between(from, to));
      }
      boolean here = eye.at().start() >= from && eye.at().start() < to;
      boolean last = i == groups.size() - 1;
      if (!here || !said.hasValues() || (last && hasConditionBefore(said, eye))) {
        return Optional.empty();
      }
      parts.add(new Scan.Group(eye.side(), eye.at(), said));
    }
    return Optional.of(new CommaParts(shared, parts));
  }

  /** A condition behind the last eye may hold for all; before it, it may be of that eye alone. */
  private static boolean hasConditionBefore(Said said, Scan.Group eye) {
    return said.slots().stream()
        .anyMatch(slot -> slot.isCondition() && said.place(slot).start() < eye.at().start());
  }
}
