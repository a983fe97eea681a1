package org.isopter.mapper.foreign.ledger;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.isopter.mapper.json.PlacedLeaf;
import org.isopter.mapper.json.Raw;

/** A value in a document that is being read; reading looks, and only {@code take} marks. */
public final class Place {

  private final Ledger ledger;
  private final Raw value;
  private final String at;

  Place(Ledger ledger, Raw value, String at) {
    this.ledger = ledger;
    this.value = value;
    this.at = at;
  }

  /** Returns what stands here. */
  public Raw value() {
    return value;
  }

  /** Returns where this is, as a JSON pointer. */
  public String at() {
    return at;
  }

  /** Returns the account of the resource that this is a place of. */
  public Ledger ledger() {
    return ledger;
  }

  /** Says whether there is a member of that name. */
  public boolean has(String name) {
    return value.get(name).isPresent();
  }

  /** Says whether there is a {@code value[x]}. */
  public boolean hasValue() {
    return value instanceof Raw.Obj object
        && object.members().keySet().stream().anyMatch(name -> name.startsWith("value"));
  }

  /** Returns the member of that name in its place; empty where there is none. */
  public Optional<Place> child(String name) {
    return value.get(name).map(child -> new Place(ledger, child, PlacedLeaf.step(at, name)));
  }

  /** Returns the items of the list of that name. */
  public List<Place> list(String name) {
    List<Raw> items = value.list(name);
    String list = PlacedLeaf.step(at, name);
    List<Place> places = new ArrayList<>(items.size());
    for (int i = 0; i < items.size(); i++) {
      places.add(new Place(ledger, items.get(i), list + "/" + i));
    }
    return places;
  }

  /** Returns the string of that name without taking it; empty text where there is none. */
  public String text(String name) {
    return value.string(name).orElse("");
  }

  /** Returns the text of a number of that name, as it was written. */
  public Optional<String> number(String name) {
    return value
        .get(name)
        .filter(leaf -> leaf instanceof Raw.Leaf l && l.kind() == Raw.Kind.NUMBER)
        .map(leaf -> ((Raw.Leaf) leaf).text());
  }

  /** Takes the members of those names, as far as they are there. */
  public void take(String rule, String... names) {
    for (String name : names) {
      child(name).ifPresent(child -> child.takeAll(rule));
    }
  }

  /** Takes everything below this. */
  public void takeAll(String rule) {
    ledger.take(new PlacedLeaf(at, value), rule);
  }

  @Override
  public String toString() {
    return at;
  }
}
