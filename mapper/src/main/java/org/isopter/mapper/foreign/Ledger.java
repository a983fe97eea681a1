package org.isopter.mapper.foreign;

import java.util.ArrayList;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeSet;

/**
 * The account of one document: which leaves were taken, by which rule, and which are left over.
 *
 * <p>Nothing can get lost: what was not taken is left over, and together they are the document.
 */
final class Ledger {

  /** The rule of what the catalogue says itself, without any rule of this package. */
  static final String CATALOGUE = "";

  private final Raw document;
  private final Map<String, String> ruleByPlace = new LinkedHashMap<>();
  private final Set<String> used = new HashSet<>();

  Ledger(Raw document) {
    this.document = document;
  }

  /** Returns the root of the document, to read from. */
  Place root() {
    return new Place(this, document, "");
  }

  /** Marks a leaf, or every leaf below a place, as taken by a rule. */
  void take(Placed placed, String rule) {
    List<Placed> leaves = new ArrayList<>();
    Placed.collect(placed.value(), placed.at(), leaves);
    leaves.forEach(leaf -> ruleByPlace.putIfAbsent(leaf.at(), rule));
  }

  /** Returns true if a rule took anything at a path or below it. */
  boolean hasTaken(String at) {
    String below = at + "/";
    return ruleByPlace.keySet().stream()
        .anyMatch(taken -> taken.equals(at) || taken.startsWith(below));
  }

  /** Gives back a leaf that was taken and found no place. */
  void giveBack(String at) {
    ruleByPlace.remove(at);
  }

  /** Notes that a rule was used that takes no leaf of its own. */
  void used(String rule) {
    used.add(rule);
  }

  /** Returns a mark to go back to. */
  Mark mark() {
    return new Mark(ruleByPlace.size(), Set.copyOf(used));
  }

  /** Forgets what was taken since the mark. */
  void backTo(Mark mark) {
    List<String> places = new ArrayList<>(ruleByPlace.keySet());
    places.subList(mark.taken(), places.size()).forEach(ruleByPlace::remove);
    used.retainAll(mark.used());
  }

  /** A state of the account. */
  record Mark(int taken, Set<String> used) {}

  /** Returns the leaves that were taken, in the order of the document. */
  List<Taken> taken() {
    return document.leaves().stream()
        .filter(leaf -> ruleByPlace.containsKey(leaf.at()))
        .map(leaf -> new Taken(leaf, ruleByPlace.getOrDefault(leaf.at(), CATALOGUE)))
        .toList();
  }

  /** Returns the leaves that nobody took, in the order of the document. */
  List<Placed> leftover() {
    return document.leaves().stream().filter(leaf -> !ruleByPlace.containsKey(leaf.at())).toList();
  }

  /** Returns what is left over, an object or a list of which nothing was taken as a whole. */
  List<Placed> leftoverWholes() {
    List<Placed> wholes = new ArrayList<>();
    wholes(new Placed("", document), wholes);
    return wholes;
  }

  /** Says whether nothing was taken at a place or below it. */
  private boolean wholes(Placed placed, List<Placed> into) {
    List<Placed> inner = new ArrayList<>();
    boolean whole = !ruleByPlace.containsKey(placed.at());
    for (Placed child : placed.children()) {
      whole &= wholes(child, inner);
    }
    if (whole) {
      into.add(placed);
    } else {
      into.addAll(inner);
    }
    return whole;
  }

  /** Returns the rules by which something was taken. */
  Set<String> rules() {
    Set<String> rules = new TreeSet<>(ruleByPlace.values());
    rules.addAll(used);
    rules.remove(CATALOGUE);
    return rules;
  }
}
