package org.isopter.mapper.foreign.ledger;

import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.isopter.mapper.json.PlacedLeaf;
import org.isopter.mapper.json.Raw;
import org.jspecify.annotations.Nullable;

/**
 * A value in a document that is being read; reading looks, and only {@code take} marks. It knows
 * the numbers of its leaves; its path is put together where something is reported.
 *
 * <p>Not for several threads at once.
 */
public final class Place {

  private final Ledger ledger;
  private final Raw value;
  private final @Nullable Place holder;

  /** The name of the member, or the number of the item, of the holder; empty for the root. */
  private final String step;

  private final int firstLeaf;
  private @Nullable String at;
  private @Nullable List<Place> children;

  private Place(Ledger ledger, Raw value, @Nullable Place holder, String step, int firstLeaf) {
    this.ledger = ledger;
    this.value = value;
    this.holder = holder;
    this.step = step;
    this.firstLeaf = firstLeaf;
  }

  static Place root(Ledger ledger, Raw document) {
    return new Place(ledger, document, null, "", 0);
  }

  /** Returns what stands here. */
  public Raw value() {
    return value;
  }

  /** Returns where this is, as a JSON pointer. */
  public String at() {
    String known = at;
    if (known == null) {
      known = holder == null ? "" : PlacedLeaf.step(holder.at(), step);
      at = known;
    }
    return known;
  }

  /**
   * Returns the name of the member, or the number of the item, that this is; empty for the root.
   */
  public String step() {
    return step;
  }

  /** Returns the account of the resource that this is a place of. */
  public Ledger ledger() {
    return ledger;
  }

  /** Returns the number of the first leaf here in the document, from 0. */
  int firstLeaf() {
    return firstLeaf;
  }

  /** Returns the number of the leaf that follows those here. */
  int endLeaf() {
    return firstLeaf + value.leafCount();
  }

  /** Says whether there is a member of that name. */
  public boolean has(String name) {
    return value instanceof Raw.Obj object && object.members().containsKey(name);
  }

  /** Says whether there is a {@code value[x]}. */
  public boolean hasValue() {
    return value instanceof Raw.Obj object && object.hasNameLike("value");
  }

  /** Returns the member of that name in its place; empty where there is none. */
  public Optional<Place> child(String name) {
    int index = value instanceof Raw.Obj object ? object.indexOf(name) : -1;
    return index < 0 ? Optional.empty() : Optional.of(children().get(index));
  }

  /** Returns the items of the list of that name. */
  public List<Place> list(String name) {
    Optional<Place> list = child(name);
    return list.isPresent() && list.get().value instanceof Raw.Arr
        ? list.get().children()
        : List.of();
  }

  /** Returns the members, or the items, each in its place. */
  public List<Place> children() {
    List<Place> known = children;
    if (known == null) {
      known = Collections.unmodifiableList(made());
      children = known;
    }
    return known;
  }

  private List<Place> made() {
    int leaf = firstLeaf;
    if (value instanceof Raw.Obj object) {
      List<Place> made = new ArrayList<>(object.members().size());
      for (Map.Entry<String, Raw> member : object.members().entrySet()) {
        made.add(new Place(ledger, member.getValue(), this, member.getKey(), leaf));
        leaf += member.getValue().leafCount();
      }
      return made;
    }
    if (value instanceof Raw.Arr list) {
      List<Place> made = new ArrayList<>(list.items().size());
      for (Raw item : list.items()) {
        made.add(new Place(ledger, item, this, Integer.toString(made.size()), leaf));
        leaf += item.leafCount();
      }
      return made;
    }
    return List.of();
  }

  /** Returns the string of that name without taking it; empty text where there is none. */
  public String text(String name) {
    return value instanceof Raw.Obj object
            && object.members().get(name) instanceof Raw.Leaf leaf
            && leaf.kind() == Raw.Kind.STRING
        ? leaf.text()
        : "";
  }

  /** Returns the text of a number of that name, as it was written. */
  public Optional<String> number(String name) {
    return value
        .get(name)
        .filter(leaf -> leaf instanceof Raw.Leaf l && l.kind() == Raw.Kind.NUMBER)
        .map(leaf -> ((Raw.Leaf) leaf).text());
  }

  /** Returns this as a leaf, or as what it is, with its path. */
  public PlacedLeaf placed() {
    return new PlacedLeaf(at(), value);
  }

  /** Takes the members of those names, as far as they are there. */
  public void take(String rule, String... names) {
    for (String name : names) {
      child(name).ifPresent(child -> child.takeAll(rule));
    }
  }

  /** Takes everything below this. */
  public void takeAll(String rule) {
    ledger.take(this, rule);
  }

  /** Returns true if something here or below was taken. */
  public boolean isTaken() {
    return ledger.hasTaken(this);
  }

  @Override
  public String toString() {
    return at();
  }
}
