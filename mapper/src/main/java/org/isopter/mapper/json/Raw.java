package org.isopter.mapper.json;

import java.util.ArrayList;
import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/**
 * A JSON value to the digit: a number keeps the text it was written in, so that {@code 1.50},
 * {@code 1e2} and {@code -0.0} stay what they are.
 */
public sealed interface Raw {

  /** An object; its members stand in the order of the document. */
  record Obj(Map<String, Raw> members) implements Raw {

    /** An object without members. */
    public static final Obj EMPTY = new Obj(Map.of());

    public Obj {
      members = Members.of(members);
    }

    /** Returns the number of the member of a name, from 0 in the order of the text; else -1. */
    public int indexOf(String name) {
      return ((Members) members).indexOf(name);
    }

    /** Says whether the name of a member begins so. */
    public boolean hasNameLike(String start) {
      return ((Members) members).hasNameLike(start);
    }

    /** Returns this object with a member replaced, or added at the end. */
    public Obj with(String name, Raw value) {
      Map<String, Raw> all = new LinkedHashMap<>(members);
      all.put(name, value);
      return new Obj(all);
    }

    /** Returns this object without a member. */
    public Obj without(String name) {
      Map<String, Raw> all = new LinkedHashMap<>(members);
      all.remove(name);
      return new Obj(all);
    }
  }

  /** A list. */
  record Arr(List<Raw> items) implements Raw {
    public Arr {
      items = Items.of(items);
    }
  }

  /**
   * A value without members.
   *
   * @param kind what it is
   * @param text a string without its quotes, or the text of a number, {@code true}, {@code false},
   *     {@code null}
   */
  record Leaf(Kind kind, String text) implements Raw {}

  /** The kinds of leaves. */
  enum Kind {
    STRING,
    NUMBER,
    TRUTH,
    NULL
  }

  /** Returns a string. */
  static Leaf of(String text) {
    return new Leaf(Kind.STRING, text);
  }

  /** Returns a list. */
  static Arr of(List<? extends Raw> items) {
    return new Arr(Items.of(items));
  }

  /** Returns the member of that name. */
  default Optional<Raw> get(String name) {
    return this instanceof Obj object
        ? Optional.ofNullable(object.members().get(name))
        : Optional.empty();
  }

  /** Returns the object of that name; empty where there is none, or something else. */
  default Optional<Obj> object(String name) {
    return this instanceof Obj holder && holder.members().get(name) instanceof Obj object
        ? Optional.of(object)
        : Optional.empty();
  }

  /** Returns the items of the list of that name; none where there is no such list. */
  default List<Raw> list(String name) {
    return this instanceof Obj holder && holder.members().get(name) instanceof Arr list
        ? list.items()
        : List.of();
  }

  /** Returns the objects in the list of that name. */
  default List<Obj> objects(String name) {
    List<Obj> objects = List.of();
    for (Raw item : list(name)) {
      if (item instanceof Obj object) {
        objects = objects.isEmpty() ? new ArrayList<>() : objects;
        objects.add(object);
      }
    }
    return Collections.unmodifiableList(objects);
  }

  /** Returns the string of that name; empty where there is none, or something else. */
  default Optional<String> string(String name) {
    return this instanceof Obj holder
            && holder.members().get(name) instanceof Leaf leaf
            && leaf.kind() == Kind.STRING
        ? Optional.of(leaf.text())
        : Optional.empty();
  }

  /** Returns the text of a string leaf. */
  default Optional<String> string() {
    return this instanceof Leaf leaf && leaf.kind() == Kind.STRING
        ? Optional.of(leaf.text())
        : Optional.empty();
  }

  /** Returns how many leaves there are below this; of a leaf 1, for it is one itself. */
  default int leafCount() {
    if (this instanceof Obj object) {
      return Math.max(1, ((Members) object.members()).leaves());
    }
    return this instanceof Arr list ? Math.max(1, ((Items) list.items()).leaves()) : 1;
  }

  /** Returns every leaf below this, in the order of the document. */
  default List<PlacedLeaf> leaves() {
    List<PlacedLeaf> leaves = new ArrayList<>();
    PlacedLeaf.collect(this, "", leaves);
    return leaves;
  }
}
