package org.isopter.mapper.record.tree;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import org.isopter.model.value.Fault;

/** Gathers every fault of a record, to be reported in the order of the text. */
public final class Complaints {

  private record Complaint(TextPlace place, Fault fault) {}

  private final List<Complaint> all = new ArrayList<>();
  private final Set<TextPlace> settled = new HashSet<>();

  /** Notes what was seen at a place where something else was wanted; nothing can be read there. */
  public <T> Optional<T> add(TextPlace place, String seen, String wanted, String advice) {
    return add(place, new Fault("", seen, wanted, advice));
  }

  /** Notes what was seen at a place and what was wanted; returns nothing. */
  public <T> Optional<T> add(TextPlace place, String seen, String wanted) {
    return add(place, seen, wanted, "");
  }

  /** Notes that a node is not what was wanted, and what to do; returns nothing. */
  public <T> Optional<T> add(Node node, String wanted, String advice) {
    return add(node.place(), node.shown(), wanted, advice);
  }

  /** Notes a fault at a place, unless enough was said of it; returns nothing. */
  public <T> Optional<T> add(TextPlace place, Fault fault) {
    if (settled.isEmpty() || !settled.contains(place)) {
      all.add(new Complaint(place, fault));
    }
    return Optional.empty();
  }

  /** Notes what makes every further word about the place needless. */
  public void settle(TextPlace place, String seen, String wanted, String advice) {
    add(place, seen, wanted, advice);
    settled.add(place);
  }

  /** Says whether there is none. */
  public boolean isEmpty() {
    return all.isEmpty();
  }

  /** Returns all of them, in the order of the text. */
  public List<Fault> faults() {
    return all.stream()
        .sorted(
            Comparator.<Complaint>comparingInt(complaint -> complaint.place().line())
                .thenComparingInt(complaint -> complaint.place().column()))
        .map(complaint -> complaint.fault().at(complaint.place().toString()))
        .toList();
  }
}
