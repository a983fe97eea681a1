package org.isopter.mapper.exchange;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import org.isopter.model.value.Fault;
import org.isopter.model.value.Result;

/**
 * Takes a transaction that is too large apart. What others refer to goes first, so that each part
 * refers to itself and to what is stored already, and the one that names all others comes last:
 * until then nobody takes what is there for the whole.
 */
final class TransactionParts {

  private final long largest;
  private final Map<String, OutgoingEntry> byUrl = new HashMap<>();
  private final Set<OutgoingEntry> open = new HashSet<>();
  private final Set<OutgoingEntry> done = new HashSet<>();
  private final List<OutgoingEntry> ordered = new ArrayList<>();
  private boolean circle;

  private TransactionParts(long largest) {
    this.largest = largest;
  }

  /**
   * Returns the entries in parts.
   *
   * @param largest how many bytes a part may have; an entry that is larger is a part by itself
   */
  static Result<List<List<OutgoingEntry>>> of(List<OutgoingEntry> entries, long largest) {
    long all = entries.stream().mapToLong(OutgoingEntry::size).sum();
    return all <= largest
        ? Result.ok(List.of(entries))
        : new TransactionParts(largest).split(entries);
  }

  private Result<List<List<OutgoingEntry>>> split(List<OutgoingEntry> entries) {
    entries.forEach(entry -> byUrl.putIfAbsent(entry.fullUrl(), entry));
    entries.forEach(this::visit);
    return circle
        ? Result.refused(
            new Fault(
                "entry",
                "entries that refer to each other in a circle, and more than " + largest + " bytes",
                "entries that can be stored one after the other",
                "allow larger transactions with --transaction-size"))
        : Result.ok(cut());
  }

  private void visit(OutgoingEntry entry) {
    if (done.contains(entry)) {
      return;
    }
    if (!open.add(entry)) {
      circle = true;
      return;
    }
    for (String name : entry.references()) {
      Optional.ofNullable(byUrl.get(name)).filter(to -> !to.equals(entry)).ifPresent(this::visit);
    }
    done.add(entry);
    ordered.add(entry);
  }

  private List<List<OutgoingEntry>> cut() {
    List<List<OutgoingEntry>> parts = new ArrayList<>();
    List<OutgoingEntry> part = new ArrayList<>();
    long size = 0;
    for (OutgoingEntry entry : ordered) {
      if (!part.isEmpty() && size + entry.size() > largest) {
        parts.add(List.copyOf(part));
        part.clear();
        size = 0;
      }
      part.add(entry);
      size += entry.size();
    }
    parts.add(List.copyOf(part));
    return parts;
  }
}
