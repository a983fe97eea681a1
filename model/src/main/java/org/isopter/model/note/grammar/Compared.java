package org.isopter.model.note.grammar;

import java.util.List;
import java.util.Set;
import org.isopter.model.note.token.NotRead;

/**
 * The two eyes of a defect that compares them: where it is found in one, that it is denied of the
 * other says no more, {@code RAPD R 2+, none L}.
 */
final class Compared {

  private static final Set<String> NONE =
      Set.of("none", "no", "nil", "absent", "negative", "neg", "-ve");

  private Compared() {}

  /** Returns the groups without one that only denies what another states; others as they are. */
  static List<Scan.Group> withoutDenied(List<Scan.Group> groups) throws NotRead {
    if (groups.size() != 2) {
      return groups;
    }
    Scan.Group first = groups.get(0);
    Said behind = first.said().afterComma();
    boolean parted = behind.slots().stream().allMatch(behind::isAfterComma);
    if (groups.get(1).said().isEmpty() && parted && isDenied(behind)) {
      return List.of(new Scan.Group(first.side(), first.at(), first.said().without(behind)));
    }
    List<Scan.Group> stated = groups.stream().filter(group -> !isDenied(group.said())).toList();
    return stated.size() == 1 && !stated.get(0).said().isEmpty() ? stated : groups;
  }

  private static boolean isDenied(Said said) {
    if (said.slots().size() != 1) {
      return false;
    }
    Slot<?> only = said.slots().get(0);
    boolean no = said.find(only).filter(Boolean.FALSE::equals).isPresent();
    return no || NONE.contains(said.words(only));
  }
}
