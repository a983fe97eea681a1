package org.isopter.model.finding;

import java.util.LinkedHashMap;
import java.util.Map;
import java.util.Optional;
import org.isopter.model.value.Outcome;

/** Gathers the parts that are there, in order. */
final class PartSink {

  private final Map<String, Outcome<Datum>> parts = new LinkedHashMap<>();

  void put(String key, Optional<Outcome<Datum>> part) {
    part.ifPresent(outcome -> parts.put(key, outcome));
  }

  Map<String, Outcome<Datum>> parts() {
    return parts;
  }
}
