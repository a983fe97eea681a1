package org.isopter.profiles.compiled;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/** An element of a resource with its type. */
final class Item {

  private final Optional<Item> parent;
  private final Member member;
  private final int index;
  private final List<Item> members = new ArrayList<>(4);
  private String text = "";

  private Item(Optional<Item> parent, Member member, int index) {
    this.parent = parent;
    this.member = member;
    this.index = index;
  }

  /** Returns an item that stands in no other. */
  static Item root(Member member) {
    return new Item(Optional.empty(), member, Member.SINGLE);
  }

  /** Adds a member. */
  Item add(Member what, int at) {
    Item item = new Item(Optional.of(this), what, at);
    members.add(item);
    return item;
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
    return member.name();
  }

  List<Item> members() {
    return members;
  }

  /** Says whether there is a member of a name as the standard defines it. */
  boolean has(String name) {
    for (Item each : members) {
      if (each.member.name().equals(name)) {
        return true;
      }
    }
    return false;
  }

  /** Returns the members of a name as the standard defines it. */
  List<Item> members(String name) {
    if (!has(name)) {
      return List.of();
    }
    List<Item> found = new ArrayList<>(members.size());
    for (Item each : members) {
      if (each.member.name().equals(name)) {
        found.add(each);
      }
    }
    return found;
  }

  /** Returns the text of the first member of a name; empty where there is none. */
  String text(String name) {
    for (Item each : members) {
      if (each.member.name().equals(name)) {
        return each.text;
      }
    }
    return "";
  }

  /** Says whether FHIRPath calls the item so: the value of any type is {@code value}. */
  boolean isCalled(String name) {
    return member.stem().equals(name);
  }

  /** Returns where it stands, as FHIRPath from the root. */
  String path() {
    return parent.map(above -> above.path() + "." + step()).orElse(member.name());
  }

  private String step() {
    String typed =
        member.isChoice() ? member.stem() + ".ofType(" + member.type() + ")" : member.name();
    return index == Member.SINGLE ? typed : typed + "[" + index + "]";
  }
}
