package org.isopter.model.finding;

import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import org.isopter.model.value.Concept;

/**
 * One way in which a finding's value may be laid out, as a plain list for readers.
 *
 * @param notation what tells it from the other variants; empty where there is only one
 * @param value what the value itself may be; empty where there are only parts
 * @param specific the parts that only this variant has; a written form covers them
 * @param parts all parts, the specific ones first
 */
public record Variant(
    Optional<Concept> notation,
    Optional<Spec> value,
    List<? extends Part<?, ?>> specific,
    List<? extends Part<?, ?>> parts) {

  /** Returns the variant of these specific parts and the parts that every variant has. */
  static Variant of(
      Optional<Concept> notation,
      Optional<Spec> value,
      List<? extends Part<?, ?>> specific,
      List<? extends Part<?, ?>> common) {
    return new Variant(
        notation,
        value,
        specific,
        Stream.<Part<?, ?>>concat(specific.stream(), common.stream()).toList());
  }
}
