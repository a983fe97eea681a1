package org.isopter.model.catalogue;

import java.util.Collections;
import java.util.EnumMap;
import java.util.Map;
import java.util.Optional;
import java.util.function.BiFunction;
import java.util.function.Function;
import org.isopter.model.finding.Part;
import org.isopter.model.finding.Values;

/** Parts that come one per constant of an enumeration, such as the quadrants of a field. */
final class Keyed {

  private Keyed() {}

  /** Returns an unmodifiable copy in the order of the constants; it may be empty. */
  static <E extends Enum<E>, T> Map<E, T> copy(Class<E> type, Map<E, T> map) {
    Map<E, T> copy = new EnumMap<>(type);
    copy.putAll(map);
    return Collections.unmodifiableMap(copy);
  }

  /** Returns a part for each constant. */
  static <E extends Enum<E>, V, P> Map<E, Part<V, P>> parts(
      Class<E> type, Function<E, Part<V, P>> part) {
    Map<E, Part<V, P>> parts = new EnumMap<>(type);
    for (E constant : type.getEnumConstants()) {
      parts.put(constant, part.apply(constant));
    }
    return Collections.unmodifiableMap(parts);
  }

  /** Returns what the values hold for each constant that is there. */
  static <E extends Enum<E>, V, P, R> Map<E, R> read(
      Class<E> type,
      Map<E, Part<V, P>> parts,
      Values values,
      BiFunction<Values, Part<V, P>, Optional<R>> get) {
    Map<E, R> found = new EnumMap<>(type);
    parts.forEach((key, part) -> get.apply(values, part).ifPresent(value -> found.put(key, value)));
    return found;
  }
}
