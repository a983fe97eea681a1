package org.isopter.profiles.compiled;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.function.Predicate;
import org.jspecify.annotations.Nullable;

/** An element of a resource with its type. */
final class Item {

  private final @Nullable Item parent;
  private final Member member;
  private final int index;
  private List<Item> members = List.of();
  private long seen;
  private String text = "";

  private Item(@Nullable Item parent, Member member, int index) {
    this.parent = parent;
    this.member = member;
    this.index = index;
  }

  /** Returns an item that stands in no other. */
  static Item root(Member member) {
    return new Item(null, member, Member.SINGLE);
  }

  /** Adds a member. */
  Item add(Member what, int at) {
    Item item = new Item(this, what, at);
    if (members.isEmpty()) {
      members = new ArrayList<>(4);
    }
    members.add(item);
    return item;
  }

  /** Says whether a member is met for the first time. */
  boolean isFirst(Member what) {
    boolean first = (seen & what.bit()) == 0;
    seen |= what.bit();
    return first;
  }

  /** Returns the name of a required member that is not there. */
  Optional<String> lacking() {
    return member.table().lacking(seen);
  }

  TypeTable table() {
    return member.table();
  }

  /** Sets the text of a primitive value; of a number, its digits as they were written. */
  void write(String written) {
    text = written;
  }

  String text() {
    return text;
  }

  /** Returns the type as FHIR names it; of a part of a resource, the path of its definition. */
  String type() {
    return member.type();
  }

  /** Returns the name as the standard defines it, for instance {@code value[x]}. */
  String name() {
    return member.name().toString();
  }

  List<Item> members() {
    return members;
  }

  /** Returns the members of a name as the standard defines it; they stand side by side. */
  List<Item> members(String name) {
    return members(Name.of(name));
  }

  /** Returns the members of a name as the standard defines it. */
  List<Item> members(Name name) {
    int from = from(name);
    int to = to(from, name);
    return from == to ? List.of() : members.subList(from, to);
  }

  /** Returns the place among the members of the first of a name, or behind the last of all. */
  int from(Name name) {
    int from = 0;
    while (from < members.size() && !members.get(from).isNamed(name)) {
      from++;
    }
    return from;
  }

  /** Returns the place behind the last member of a name. */
  int to(int from, Name name) {
    int to = from;
    while (to < members.size() && members.get(to).isNamed(name)) {
      to++;
    }
    return to;
  }

  /** Says whether there is a member of a name that fits. */
  boolean any(Name name, Predicate<Item> fits) {
    for (int i = from(name); i < members.size() && members.get(i).isNamed(name); i++) {
      if (fits.test(members.get(i))) {
        return true;
      }
    }
    return false;
  }

  private boolean isNamed(Name name) {
    return member.name() == name;
  }

  /** Returns the text of the first member of a name; empty where there is none. */
  String text(Name name) {
    int at = from(name);
    return at == members.size() ? "" : members.get(at).text;
  }

  /** Returns the text of the first member of a name; empty where there is none. */
  String text(String name) {
    return text(Name.of(name));
  }

  /** Says whether FHIRPath calls the item so: the value of any type is {@code value}. */
  boolean isCalled(Name name) {
    return member.stem() == name;
  }

  /** Returns where it stands, as FHIRPath from the root. */
  String path() {
    return parent == null ? name() : parent.path() + "." + step();
  }

  private String step() {
    String typed = member.isChoice() ? member.stem() + ".ofType(" + member.type() + ")" : name();
    return index == Member.SINGLE ? typed : typed + "[" + index + "]";
  }
}
