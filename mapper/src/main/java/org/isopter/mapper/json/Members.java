package org.isopter.mapper.json;

import java.util.AbstractMap;
import java.util.AbstractSet;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Collection;
import java.util.Collections;
import java.util.HashMap;
import java.util.Iterator;
import java.util.List;
import java.util.Map;
import java.util.NoSuchElementException;
import java.util.Set;
import java.util.function.BiConsumer;
import org.jspecify.annotations.Nullable;

/**
 * The members of an object in the order of the document, in two arrays: most objects have a few, of
 * which looking at each is quicker than a table. They do not change.
 */
final class Members extends AbstractMap<String, Raw> {

  /** With more members than this a table is quicker. */
  private static final int FEW = 12;

  private static final int NONE = -1;

  private final String[] names;
  private final Raw[] values;
  private final int[] hashes;
  private final int leaves;
  private final Map<String, Integer> table;

  private Members(String[] names, Raw[] values) {
    this.names = names;
    this.values = values;
    this.hashes = hashes(names);
    this.leaves = Items.leaves(values);
    this.table = names.length <= FEW ? Map.of() : table(names);
  }

  private static int[] hashes(String[] names) {
    int[] hashes = new int[names.length];
    for (int i = 0; i < names.length; i++) {
      hashes[i] = names[i].hashCode();
    }
    return hashes;
  }

  private static Map<String, Integer> table(String[] names) {
    Map<String, Integer> table = new HashMap<>();
    for (int i = 0; i < names.length; i++) {
      table.put(names[i], i);
    }
    return table;
  }

  /** Returns the members of a map. */
  static Members of(Map<String, Raw> map) {
    if (map instanceof Members members) {
      return members;
    }
    Draft draft = new Draft();
    map.forEach(draft::add);
    return draft.members();
  }

  /** Members that are being gathered; no name may be added twice. */
  static final class Draft {
    private final List<String> names = new ArrayList<>();
    private final List<Raw> values = new ArrayList<>();

    void add(String name, Raw value) {
      names.add(name);
      values.add(value);
    }

    Members members() {
      return new Members(names.toArray(String[]::new), values.toArray(Raw[]::new));
    }
  }

  /** Returns how many leaves there are below. */
  int leaves() {
    return leaves;
  }

  /** Returns the number of the member of a name; below zero where there is none. */
  int indexOf(@Nullable Object name) {
    if (name == null) {
      return NONE;
    }
    if (names.length > FEW) {
      return table.getOrDefault(name, NONE);
    }
    int hash = name.hashCode();
    for (int i = 0; i < hashes.length; i++) {
      if (hashes[i] == hash && names[i].equals(name)) {
        return i;
      }
    }
    return NONE;
  }

  boolean hasNameLike(String start) {
    for (String name : names) {
      if (name.startsWith(start)) {
        return true;
      }
    }
    return false;
  }

  @Override
  public @Nullable Raw get(@Nullable Object name) {
    int index = indexOf(name);
    return index < 0 ? null : values[index];
  }

  @Override
  public boolean containsKey(@Nullable Object name) {
    return indexOf(name) >= 0;
  }

  @Override
  public int size() {
    return names.length;
  }

  @Override
  public void forEach(BiConsumer<? super String, ? super Raw> action) {
    for (int i = 0; i < names.length; i++) {
      action.accept(names[i], values[i]);
    }
  }

  @Override
  public Collection<Raw> values() {
    return Collections.unmodifiableList(Arrays.asList(values));
  }

  @Override
  public Set<Map.Entry<String, Raw>> entrySet() {
    return new AbstractSet<>() {
      @Override
      public Iterator<Map.Entry<String, Raw>> iterator() {
        return new Entries();
      }

      @Override
      public int size() {
        return names.length;
      }
    };
  }

  /** Goes over the members in their order. */
  private final class Entries implements Iterator<Map.Entry<String, Raw>> {
    private int next;

    @Override
    public boolean hasNext() {
      return next < names.length;
    }

    @Override
    public Map.Entry<String, Raw> next() {
      if (!hasNext()) {
        throw new NoSuchElementException();
      }
      int index = next++;
      return Map.entry(names[index], values[index]);
    }
  }
}
