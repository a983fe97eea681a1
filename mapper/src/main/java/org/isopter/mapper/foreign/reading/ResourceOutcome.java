package org.isopter.mapper.foreign.reading;

import java.util.List;
import java.util.Set;
import org.isopter.mapper.foreign.ledger.LaterList;
import org.isopter.mapper.foreign.ledger.Reason;
import org.isopter.mapper.foreign.ledger.Taken;
import org.isopter.mapper.json.PlacedLeaf;
import org.isopter.model.exam.Fact;

/** What became of a resource: one of three, and nothing else. */
public sealed interface ResourceOutcome {

  /** It says exactly what the catalogue says; nothing is left over that could mean something. */
  record Exact(List<Fact<?>> facts) implements ResourceOutcome {
    public Exact {
      facts = List.copyOf(facts);
    }
  }

  /**
   * It was translated by rules.
   *
   * @param facts what it says in the words of the catalogue; a fact of which it gave a part is
   *     there too, though another resource holds it
   * @param rules the ids of the rules, sorted
   * @param taken the leaves that were understood, each with its rule
   * @param leftover the leaves that were not; they are carried along
   * @param reasons why a part of it that looked like a finding was left over
   */
  record Translated(
      List<Fact<?>> facts,
      Set<String> rules,
      List<Taken> taken,
      List<PlacedLeaf> leftover,
      List<Reason> reasons)
      implements ResourceOutcome {
    public Translated {
      facts = List.copyOf(facts);
      taken = LaterList.copyOf(taken);
      leftover = LaterList.copyOf(leftover);
      reasons = List.copyOf(reasons);
    }
  }

  /** It was kept verbatim, and this is why. */
  record Kept(List<Reason> reasons) implements ResourceOutcome {
    public Kept {
      reasons = List.copyOf(reasons);
    }
  }

  /** Returns the facts that were taken; none where it was kept. */
  default List<Fact<?>> facts() {
    return List.of();
  }

  /** Returns {@code exact}, {@code translated} or {@code kept}. */
  default String word() {
    return this instanceof Exact ? "exact" : this instanceof Translated ? "translated" : "kept";
  }
}
