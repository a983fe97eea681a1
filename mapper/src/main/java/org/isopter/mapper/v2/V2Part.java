package org.isopter.mapper.v2;

import java.util.LinkedHashMap;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.stream.IntStream;
import org.isopter.mapper.json.Raw;

/**
 * A result that is a part of the one above it, as a component of FHIR.
 *
 * @param whole the result above
 * @param part the part
 */
record V2Part(V2Segment whole, V2Segment part) {

  private static final int CODE = 3;
  private static final int RESULT_STATUS = 11;

  /** The fields of a part that says nothing of its own but what it is and its value. */
  private static final Set<Integer> OWN = Set.of(1, 2, CODE, 4, 5, 6, RESULT_STATUS);

  /** Returns the component; empty where the part says more, or its value is not understood. */
  Optional<Raw.Obj> read() {
    V2Value value = new V2Value(part);
    boolean plain =
        IntStream.range(1, part.fields().size())
            .allMatch(field -> OWN.contains(field) || part.raw(field).isEmpty());
    boolean same = part.raw(RESULT_STATUS).equals(whole.raw(RESULT_STATUS)) || value.isReason();
    if (!plain || !same || part.repetitions(CODE).size() != 1 || part.isDivided(CODE)) {
      return Optional.empty();
    }
    return value.read().flatMap(this::component);
  }

  private Optional<Raw.Obj> component(Map.Entry<String, Raw> value) {
    Map<String, Raw> component = new LinkedHashMap<>();
    V2Values.concept(part, CODE).ifPresent(code -> component.put("code", code));
    component.put(value.getKey(), value.getValue());
    return Optional.of(new Raw.Obj(component));
  }
}
