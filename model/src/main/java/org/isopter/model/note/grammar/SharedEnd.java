package org.isopter.model.note.grammar;

import java.util.List;
import java.util.Optional;
import org.isopter.model.note.token.NotRead;
import org.isopter.model.value.Site;

/**
 * What is said of both eyes behind the last of them: {@code R -2.00 DS L -1.00 DS, add +2.00 OU}.
 * Only an addition may be shared so; where each eye is named, what follows it may as well.
 */
final class SharedEnd {

  private SharedEnd() {}

  /** Returns the groups of two eyes with what a third group says of both; others as they are. */
  static List<Scan.Group> among(List<Scan.Group> groups) throws NotRead {
    if (groups.size() != 3 || !isBoth(groups.get(2)) || isBoth(groups.get(0))) {
      return groups;
    }
    Scan.Group both = groups.get(2);
    Said end = both.said().isEmpty() ? end(groups.get(1).said()) : both.said();
    if (!mayBeShared(end, both)) {
      return groups;
    }
    Scan.Group last = groups.get(1);
    Said own = both.said().isEmpty() ? last.said().without(end) : last.said();
    return List.of(with(groups.get(0), groups.get(0).said(), end), with(last, own, end));
  }

  private static boolean isBoth(Scan.Group group) {
    return group.side().equals(Optional.of(Site.BOTH));
  }

  /** Returns what a comma sets off, and without one an addition and all that follows it. */
  private static Said end(Said said) throws NotRead {
    int addition =
        said.slots().stream()
            .filter(slot -> slot.role() == Slot.Role.VALUE_OF_EACH)
            .mapToInt(slot -> said.place(slot).start())
            .findFirst()
            .orElse(Integer.MAX_VALUE);
    Said end = new Said();
    for (Slot<?> slot : said.slots()) {
      if (said.isAfterComma(slot) || said.place(slot).start() >= addition) {
        end.copy(slot, said);
      }
    }
    return end;
  }

  private static boolean mayBeShared(Said end, Scan.Group both) {
    boolean each = both.at().is(Common.EACH);
    boolean addition =
        end.slots().stream().anyMatch(slot -> slot.role() == Slot.Role.VALUE_OF_EACH);
    return addition
        && (each || end.slots().stream().allMatch(slot -> slot.role() == Slot.Role.VALUE_OF_EACH));
  }

  private static Scan.Group with(Scan.Group group, Said own, Said shared) throws NotRead {
    Said all = new Said();
    all.putAll(own);
    all.putAll(shared);
    return new Scan.Group(group.side(), group.at(), all);
  }
}
