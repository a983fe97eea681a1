package org.isopter.mapper.foreign.ledger;

import java.util.AbstractList;
import java.util.List;
import java.util.function.Supplier;
import org.apiguardian.api.API;
import org.apiguardian.api.API.Status;

/**
 * A list that does not change and of which the length is known; its items are made when one of them
 * is first asked for.
 *
 * @param <T> the type of the items
 */
@API(status = Status.INTERNAL)
public final class LaterList<T> extends AbstractList<T> {

  private final int size;
  private final Supplier<List<T>> items;

  LaterList(int size, Supplier<List<T>> maker) {
    this.size = size;
    this.items = Lazy.of(maker);
  }

  /** Returns a list that does not change; one that is still to be made stays so. */
  public static <T> List<T> copyOf(List<T> list) {
    return list instanceof LaterList<T> ? list : List.copyOf(list);
  }

  @Override
  public T get(int index) {
    return items.get().get(index);
  }

  @Override
  public int size() {
    return size;
  }
}
