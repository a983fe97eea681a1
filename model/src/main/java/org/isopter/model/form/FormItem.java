package org.isopter.model.form;

import java.util.List;
import java.util.Optional;
import java.util.Set;
import org.isopter.model.finding.DatumTexts;
import org.isopter.model.finding.Span;
import org.isopter.model.finding.Spec;
import org.isopter.model.value.Concept;

/**
 * A question of a form.
 *
 * @param key what a record calls the answer
 * @param title what is asked
 * @param spec what the answer may be; empty where it is a text in the notation of the finding
 * @param repeats whether it may have several answers
 * @param onlyWith the values beside which it is asked; empty where it is always
 */
public record FormItem(
    String key,
    String title,
    Optional<Spec> spec,
    boolean repeats,
    Set<? extends Concept> onlyWith) {

  public FormItem {
    onlyWith = Set.copyOf(onlyWith);
  }

  static FormItem of(String key, String title, Spec spec) {
    return new FormItem(key, title, Optional.of(spec), false, Set.of());
  }

  /** Returns the only unit that an answer may have; empty where there are several or none. */
  public Optional<String> unit() {
    if (spec.orElse(null) instanceof Spec.Measure measure && measure.spans().size() == 1) {
      return unit(measure.spans().get(0).unit().text());
    }
    return spec.orElse(null) instanceof Spec.Ratio ratio
        ? unit(ratio.unit().text())
        : Optional.empty();
  }

  private static Optional<String> unit(String text) {
    return Optional.of(text).filter(some -> !some.isEmpty());
  }

  /** Returns what is asked, with the numbers and the unit that it is answered in. */
  public String text() {
    if (spec.orElse(null) instanceof Spec.Measure measure) {
      List<String> spans = measure.spans().stream().map(Span::toString).toList();
      return title + " (" + String.join(", or ", spans) + ")";
    }
    return spec.orElse(null) instanceof Spec.Count || spec.orElse(null) instanceof Spec.Ratio
        ? title + " (" + DatumTexts.wanted(spec.orElseThrow()) + ")"
        : title;
  }
}
