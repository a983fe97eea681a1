package org.isopter.mapper.foreign.ledger;

import java.util.ArrayList;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeSet;
import org.isopter.mapper.json.PlacedLeaf;
import org.isopter.mapper.json.Raw;

/**
 * The account of one document: which leaves were taken, by which rule, and which are left over.
 *
 * <p>Nothing can get lost: what was not taken is left over, and together they are the document.
 */
public final class Ledger {

  /** The rule of what the catalogue says itself, without any rule of this package. */
  public static final String CATALOGUE = "";

  private final Raw document;
  private final Map<String, String> ruleByPlace = new LinkedHashMap<>();
  private final Set<String> used = new HashSet<>();

  public Ledger(Raw document) {
    this.document = document;
  }

  /** Returns the root of the document, to read from. */
  public Place root() {
    return new Place(this, document, "");
  }

  /** Marks a leaf, or every leaf below a place, as taken by a rule. */
  public void take(PlacedLeaf element, String rule) {
    List<PlacedLeaf> leaves = new ArrayList<>();
    PlacedLeaf.collect(element.value(), element.at(), leaves);
    leaves.forEach(leaf -> ruleByPlace.putIfAbsent(leaf.at(), rule));
  }

  /** Returns true if a rule took anything at a path or below it. */
  public boolean hasTaken(String at) {
    String below = at + "/";
    return ruleByPlace.keySet().stream()
        .anyMatch(taken -> taken.equals(at) || taken.startsWith(below));
  }

  /** Gives back a leaf that was taken and found no place. */
  public void giveBack(String at) {
    ruleByPlace.remove(at);
  }

  /** Notes that a rule was used that takes no leaf of its own. */
  public void used(String rule) {
    used.add(rule);
  }

  /** Returns a mark to go back to. */
  public Mark mark() {
    return new Mark(ruleByPlace.size(), Set.copyOf(used));
  }

  /** Forgets what was taken since the mark. */
  public void backTo(Mark mark) {
    List<String> places = new ArrayList<>(ruleByPlace.keySet());
    places.subList(mark.taken(), places.size()).forEach(ruleByPlace::remove);
    used.retainAll(mark.used());
  }

  /** A state of the account. */
  public record Mark(int taken, Set<String> used) {}

  /** Returns the leaves that were taken, in the order of the document. */
  public List<Taken> taken() {
    return document.leaves().stream()
        .filter(leaf -> ruleByPlace.containsKey(leaf.at()))
        .map(leaf -> new Taken(leaf, ruleByPlace.getOrDefault(leaf.at(), CATALOGUE)))
        .toList();
  }

  /** Returns the leaves that nobody took, in the order of the document. */
  public List<PlacedLeaf> leftover() {
    return document.leaves().stream().filter(leaf -> !ruleByPlace.containsKey(leaf.at())).toList();
  }

  /** Returns what is left over, an object or a list of which nothing was taken as a whole. */
  public List<PlacedLeaf> leftoverWholes() {
    List<PlacedLeaf> wholes = new ArrayList<>();
    wholes(new PlacedLeaf("", document), wholes);
    return wholes;
  }

  /** Says whether nothing was taken at a place or below it. */
  private boolean wholes(PlacedLeaf element, List<PlacedLeaf> into) {
    List<PlacedLeaf> inner = new ArrayList<>();
    boolean whole = !ruleByPlace.containsKey(element.at());
    for (PlacedLeaf child : element.children()) {
      whole &= wholes(child, inner);
    }
    if (whole) {
      into.add(element);
    } else {
      into.addAll(inner);
    }
    return whole;
  }

  /** Returns the rules by which something was taken. */
  public Set<String> rules() {
    Set<String> rules = new TreeSet<>(ruleByPlace.values());
    rules.addAll(used);
    rules.remove(CATALOGUE);
    return rules;
  }
}
