package org.isopter.model.finding;

import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.Optional;
import org.isopter.model.value.Concept;
import org.isopter.model.value.Outcome;

/**
 * A whole value in first-order form: its notation where there is a choice, the value itself where
 * there is one, and its parts by key.
 *
 * @param notation which alternative of a choice this is
 * @param value the value itself, apart from its parts
 * @param parts the parts that are there, by key, in the order of the layout
 */
public record EncodedValue(
    Optional<Concept> notation, Optional<Datum> value, Map<String, Outcome<Datum>> parts) {

  public EncodedValue {
    parts = Collections.unmodifiableMap(new LinkedHashMap<>(parts));
  }

  /** Returns the part's datum, or nothing when it is left out or absent. */
  public Optional<Datum> found(String key) {
    return Optional.ofNullable(parts.get(key)).flatMap(Outcome::ifFound);
  }

  /** Returns the panel with further parts. */
  public EncodedValue with(Map<String, Outcome<Datum>> more) {
    Map<String, Outcome<Datum>> all = new LinkedHashMap<>(parts);
    all.putAll(more);
    return new EncodedValue(notation, value, all);
  }
}
