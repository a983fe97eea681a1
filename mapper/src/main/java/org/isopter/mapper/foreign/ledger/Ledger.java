package org.isopter.mapper.foreign.ledger;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Set;
import java.util.TreeSet;
import org.isopter.mapper.json.PlacedLeaf;
import org.isopter.mapper.json.Raw;
import org.jspecify.annotations.Nullable;

/**
 * The account of one document: which leaves were taken, by which rule, and which are left over. The
 * leaves are numbered in the order of the document.
 *
 * <p>Nothing can get lost: what was not taken is left over, and together they are the document.
 */
public final class Ledger {

  /** The rule of what the catalogue says itself, without any rule of this package. */
  public static final String CATALOGUE = "";

  private static final int FEW = 16;

  private final Place root;

  /** The rule by which each leaf was taken; of most resources nothing is. */
  private @Nullable String[] rules = new String[0];

  /** The leaves that were taken, in the order in which they were, to go back. */
  private int[] order = new int[FEW];

  private int takes;
  private final List<String> used = new ArrayList<>();

  public Ledger(Raw document) {
    this.root = Place.root(this, document);
  }

  /** Returns the root of the document, to read from. */
  public Place root() {
    return root;
  }

  /** Marks every leaf of a place that is not taken as taken by a rule. */
  void take(Place place, String rule) {
    if (rules.length == 0) {
      rules = new String[root.endLeaf()];
    }
    for (int leaf = place.firstLeaf(); leaf < place.endLeaf(); leaf++) {
      if (rules[leaf] == null) {
        rules[leaf] = rule;
        if (takes == order.length) {
          order = Arrays.copyOf(order, 2 * takes);
        }
        order[takes++] = leaf;
      }
    }
  }

  /** Returns true if a rule took anything at a place or below it. */
  boolean hasTaken(Place place) {
    for (int leaf = place.firstLeaf(); leaf < Math.min(place.endLeaf(), rules.length); leaf++) {
      if (rules[leaf] != null) {
        return true;
      }
    }
    return false;
  }

  /** Gives back what was taken below names, from the root on, and found no place. */
  public void giveBack(String... names) {
    Place place = root;
    for (String name : names) {
      if (!place.has(name)) {
        return;
      }
      place = place.child(name).orElseThrow();
    }
    for (int leaf = place.firstLeaf(); leaf < Math.min(place.endLeaf(), rules.length); leaf++) {
      rules[leaf] = null;
    }
  }

  /** Notes that a rule was used that takes no leaf of its own. */
  public void used(String rule) {
    if (!used.contains(rule)) {
      used.add(rule);
    }
  }

  /** Returns a mark to go back to. */
  public Mark mark() {
    return new Mark(takes, used.size());
  }

  /** Forgets what was taken since the mark. */
  public void backTo(Mark mark) {
    while (takes > mark.taken()) {
      rules[order[--takes]] = null;
    }
    used.subList(mark.used(), used.size()).clear();
  }

  /** A state of the account: how many leaves were taken, how many rules used. */
  public record Mark(int taken, int used) {}

  /** Returns the leaves that were taken once reading is done, in the order of the document. */
  public List<Taken> taken() {
    return new LaterList<>(
        count(),
        () -> {
          List<Taken> taken = new ArrayList<>();
          taken(root, taken);
          return taken;
        });
  }

  /** Returns how many leaves were taken. */
  private int count() {
    int count = 0;
    for (String rule : rules) {
      count += rule == null ? 0 : 1;
    }
    return count;
  }

  private void taken(Place place, List<Taken> into) {
    List<Place> children = hasTaken(place) ? place.children() : List.of();
    children.forEach(child -> taken(child, into));
    String rule = children.isEmpty() ? rule(place.firstLeaf()) : null;
    if (rule != null) {
      into.add(new Taken(place.placed(), rule));
    }
  }

  private @Nullable String rule(int leaf) {
    return leaf < rules.length ? rules[leaf] : null;
  }

  /** Returns the leaves that nobody took once reading is done, in the order of the document. */
  public List<PlacedLeaf> leftover() {
    return new LaterList<>(
        root.endLeaf() - count(),
        () -> {
          List<PlacedLeaf> leftover = new ArrayList<>();
          leftover(root, leftover);
          return leftover;
        });
  }

  private void leftover(Place place, List<PlacedLeaf> into) {
    List<Place> children = place.children();
    children.forEach(child -> leftover(child, into));
    if (children.isEmpty() && rule(place.firstLeaf()) == null) {
      into.add(place.placed());
    }
  }

  /** Returns what is left over, an object or a list of which nothing was taken as a whole. */
  public List<PlacedLeaf> leftoverWholes() {
    List<PlacedLeaf> wholes = new ArrayList<>();
    wholes(root, wholes);
    return wholes;
  }

  private void wholes(Place place, List<PlacedLeaf> into) {
    if (hasTaken(place)) {
      place.children().forEach(child -> wholes(child, into));
    } else {
      into.add(place.placed());
    }
  }

  /** Returns the rules by which something was taken. */
  public Set<String> rules() {
    Set<String> all = new TreeSet<>(used);
    for (String rule : rules) {
      if (rule != null) {
        all.add(rule);
      }
    }
    all.remove(CATALOGUE);
    return all;
  }
}
