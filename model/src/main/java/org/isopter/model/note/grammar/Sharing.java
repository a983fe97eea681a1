package org.isopter.model.note.grammar;

import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import org.isopter.model.note.token.NotRead;
import org.isopter.model.note.token.Token;
import org.isopter.model.value.Site;

/**
 * Decides which eye each word of an item is about.
 *
 * <p>A condition holds for every eye when it stands before the first side or behind the last eye;
 * otherwise it is said of each eye. A value stands behind its side, or anywhere in an item that
 * names one side. Everything else is refused.
 */
public final class Sharing {

  /** Why an addition behind the last eye is not read. */
  public static final String OF_ONE_OR_BOTH =
      "behind the last eye it may be said of one eye or of both: say it of each";

  private static final Set<String> NOTHING = Set.of("normal", "absent", "none", "no", "nil");

  private final Said head;
  private final List<Scan.Group> groups;
  private final List<Token> commas;

  private Sharing(Said head, List<Scan.Group> groups, List<Token> commas) {
    this.head = head;
    this.groups = groups;
    this.commas = commas;
  }

  /**
   * Returns the groups with all that holds for each; there is at least one group.
   *
   * @param sign whether the heading names a sign, which beside an eye says that it is there
   */
  static List<Scan.Group> among(
      Said head,
      List<Scan.Group> named,
      Optional<CommaParts> parts,
      List<Token> commas,
      boolean sign)
      throws NotRead {
    List<Scan.Group> groups = SharedEnd.among(named);
    Sharing sharing =
        isBehind(head, groups)
            ? behind(head, groups)
            : parts
                .map(apart -> new Sharing(apart.head(), apart.groups(), List.of()))
                .orElseGet(() -> new Sharing(head, groups, commas));
    if (groups.size() > 1) {
      sharing.requireClearEnd();
      sharing.requireValuesBehindSides();
      if (parts.isEmpty()) {
        sharing.requireClearCommas();
      }
      sharing.requireAllStated(sign);
    }
    return sharing.shared();
  }

  /**
   * Says whether each value stands before its side, as in 14 OD 16 OS: one before the first side,
   * none behind the last.
   */
  static boolean isBehind(Said head, List<Scan.Group> groups) {
    return groups.size() > 1
        && head.hasValues()
        && groups.subList(0, groups.size() - 1).stream().allMatch(one -> one.said().hasValues())
        && !groups.get(groups.size() - 1).said().hasValues();
  }

  /** Gives each side what stands before it; conditions before the first value hold for all. */
  private static Sharing behind(Said head, List<Scan.Group> groups) throws NotRead {
    Said before = head.conditionsBeforeValues();
    List<Scan.Group> moved = new ArrayList<>();
    Said said = head.without(before);
    Set<Slot<?>> values = said.values();
    for (Scan.Group group : groups.subList(0, groups.size() - 1)) {
      Said next = group.said().afterComma();
      Said own = group.said().without(next);
      own.putAll(said);
      moved.add(new Scan.Group(group.side(), group.at(), own));
      requireSame(values, next, group);
      said = next;
    }
    moved.add(
        new Scan.Group(
            groups.get(groups.size() - 1).side(), groups.get(groups.size() - 1).at(), said));
    requireOfEach(said, moved);
    // Behind the last eye there are only conditions, which hold for every eye.
    before.putAll(groups.get(groups.size() - 1).said());
    return new Sharing(before, moved, List.of());
  }

  /** A condition before the last eye is of that eye alone, or of all; unless each has its own. */
  private static void requireOfEach(Said lastSaid, List<Scan.Group> groups) throws NotRead {
    for (Slot<?> slot : lastSaid.slots()) {
      if (slot.isCondition() && !groups.stream().allMatch(group -> group.said().has(slot))) {
        throw NotRead.at(
            lastSaid.place(slot), "the " + slot.name() + " may be said of one eye or of both");
      }
    }
  }

  /**
   * What goes to the next side must be of the kind that went to this one, unless a comma parts
   * them.
   */
  private static void requireSame(Set<Slot<?>> values, Said next, Scan.Group group) throws NotRead {
    boolean parted = next.slots().stream().allMatch(next::isAfterComma);
    if (!next.values().equals(values) && !parted) {
      throw NotRead.at(
          group.at(),
          "what stands around it may be said of either eye: put each value behind its side");
    }
  }

  /** An addition behind the last eye is often meant for both. */
  private void requireClearEnd() throws NotRead {
    for (Slot<?> slot : last().said().slots()) {
      boolean ofEach = groups.stream().allMatch(group -> group.said().has(slot));
      if (slot.mayBeShared() && !ofEach && !last().side().equals(Optional.of(Site.BOTH))) {
        throw NotRead.at(last().said().place(slot), OF_ONE_OR_BOTH);
      }
    }
  }

  private List<Scan.Group> shared() throws NotRead {
    List<Scan.Group> shared = new ArrayList<>();
    Set<Slot<?>> trailing = trailing();
    for (Scan.Group group : groups) {
      Said said = new Said();
      said.putAll(head);
      said.putAll(group.said());
      for (Slot<?> slot : trailing) {
        if (!said.has(slot) && !group.said().has(Common.ABSENCE)) {
          said.copy(slot, last().said());
        }
      }
      shared.add(new Scan.Group(group.side(), group.at(), said));
    }
    return shared;
  }

  /** Returns the conditions that stand only behind the last eye. */
  private Set<Slot<?>> trailing() throws NotRead {
    Set<Slot<?>> trailing = new LinkedHashSet<>();
    for (Scan.Group group : groups) {
      for (Slot<?> slot : group.said().slots()) {
        long times = groups.stream().filter(other -> other.said().has(slot)).count();
        if (slot.isCondition() && times < groups.size() && !isOfThisEye(slot, group)) {
          requireTrailing(slot, group, times);
          trailing.add(slot);
        }
      }
    }
    return trailing;
  }

  /**
   * Says whether a condition is clearly of one eye that is not the last: it stands between the side
   * and its value, {@code R sc 6/9 L 6/12}, or a comma parts it from the next side. The other eye
   * then has none.
   */
  private boolean isOfThisEye(Slot<?> slot, Scan.Group group) {
    if (slot.equals(Common.REASON)) {
      return group.said().has(Common.ABSENCE);
    }
    int next = groups.indexOf(group) + 1;
    if (next == groups.size() || !group.said().hasValues() || group.said().isAfterComma(slot)) {
      return false;
    }
    int place = group.said().place(slot).start();
    int end = groups.get(next).at().start();
    boolean parted = commas.stream().anyMatch(at -> at.start() > place && at.start() < end);
    return parted || !group.said().isBehindValue(slot);
  }

  private void requireTrailing(Slot<?> slot, Scan.Group group, long times) throws NotRead {
    if (times > 1 || !group.equals(last())) {
      throw NotRead.at(
          group.said().place(slot),
          "the "
              + slot.name()
              + " is said of one eye and not of the other: say it of each, or once before the"
              + " first side");
    }
  }

  private void requireValuesBehindSides() throws NotRead {
    Optional<Slot<?>> early = head.slots().stream().filter(slot -> !slot.isCondition()).findFirst();
    if (early.isPresent()) {
      throw NotRead.at(
          head.place(early.get()),
          "it stands before the first of several sides: put each value behind its side");
    }
  }

  private void requireClearCommas() throws NotRead {
    for (Slot<?> slot : last().said().slots()) {
      boolean ofEach = groups.stream().allMatch(group -> group.said().has(slot));
      if (!slot.isCondition() && last().said().isAfterComma(slot) && !ofEach) {
        throw NotRead.at(
            last().said().place(slot),
            "behind the comma it may be said of one eye or of both: name its side");
      }
    }
  }

  private void requireAllStated(boolean sign) throws NotRead {
    for (Scan.Group group : groups) {
      if (!group.said().hasValues() && !(sign && isAgainstFellow(group))) {
        throw NotRead.at(group.at(), "nothing is said of this eye");
      }
    }
  }

  /** Says whether the other eye behind a comma has nothing: papilloedema R, L normal. */
  private boolean isAgainstFellow(Scan.Group group) {
    Said fellow = last().said();
    return groups.size() == 2
        && commas.size() == 1
        && !group.equals(last())
        && group.said().isEmpty()
        && fellow.values().size() == 1
        && fellow.values().stream().allMatch(slot -> NOTHING.contains(fellow.place(slot).text()));
  }

  private Scan.Group last() {
    return groups.get(groups.size() - 1);
  }
}
