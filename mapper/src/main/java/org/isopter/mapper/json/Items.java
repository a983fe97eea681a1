package org.isopter.mapper.json;

import java.util.AbstractList;
import java.util.List;
import java.util.RandomAccess;

/** The items of a list, which do not change, and how many leaves there are in them. */
final class Items extends AbstractList<Raw> implements RandomAccess {

  private final Raw[] values;
  private final int leaves;

  private Items(Raw[] values) {
    this.values = values;
    this.leaves = leaves(values);
  }

  static Items of(List<? extends Raw> list) {
    return list instanceof Items items ? items : new Items(List.copyOf(list).toArray(Raw[]::new));
  }

  /** Returns how many leaves some values have together. */
  static int leaves(Raw[] values) {
    int leaves = 0;
    for (Raw value : values) {
      leaves += value.leafCount();
    }
    return leaves;
  }

  int leaves() {
    return leaves;
  }

  @Override
  public Raw get(int index) {
    return values[index];
  }

  @Override
  public int size() {
    return values.length;
  }
}
