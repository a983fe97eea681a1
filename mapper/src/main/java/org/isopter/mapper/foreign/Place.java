package org.isopter.mapper.foreign;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/** A value in a document that is being read; reading looks, and only {@code take} marks. */
final class Place {

  private final Ledger ledger;
  private final Raw value;
  private final String at;

  Place(Ledger ledger, Raw value, String at) {
    this.ledger = ledger;
    this.value = value;
    this.at = at;
  }

  Raw value() {
    return value;
  }

  /** Returns where this is, as a JSON pointer. */
  String at() {
    return at;
  }

  Ledger ledger() {
    return ledger;
  }

  boolean has(String name) {
    return value.get(name).isPresent();
  }

  Optional<Place> child(String name) {
    return value.get(name).map(child -> new Place(ledger, child, Placed.step(at, name)));
  }

  /** Returns the items of the list of that name. */
  List<Place> list(String name) {
    List<Raw> items = value.list(name);
    String list = Placed.step(at, name);
    List<Place> places = new ArrayList<>(items.size());
    for (int i = 0; i < items.size(); i++) {
      places.add(new Place(ledger, items.get(i), list + "/" + i));
    }
    return places;
  }

  /** Returns the string of that name without taking it; empty text where there is none. */
  String text(String name) {
    return value.string(name).orElse("");
  }

  /** Returns the text of a number of that name, as it was written. */
  Optional<String> number(String name) {
    return value
        .get(name)
        .filter(leaf -> leaf instanceof Raw.Leaf l && l.kind() == Raw.Kind.NUMBER)
        .map(leaf -> ((Raw.Leaf) leaf).text());
  }

  /** Takes the members of those names, as far as they are there. */
  void take(String rule, String... names) {
    for (String name : names) {
      child(name).ifPresent(child -> child.takeAll(rule));
    }
  }

  /** Takes everything below this. */
  void takeAll(String rule) {
    ledger.take(new Placed(at, value), rule);
  }

  @Override
  public String toString() {
    return at;
  }
}
