package org.isopter.model.note.grammar;

import java.util.Optional;
import java.util.function.Function;
import org.isopter.model.finding.Finding;

/**
 * How the facts of a finding are written: heading, conditions, side, lead, value.
 *
 * @param finding the finding
 * @param heading what the item starts with
 * @param conditions what stands before the side for a value; may be empty
 * @param lead what stands before the value or the reason for absence; may be empty
 * @param value the value in words; empty where the shorthand has none for it
 * @param <V> the type of the value
 */
public record Wording<V>(
    Finding<V> finding,
    String heading,
    Function<V, String> conditions,
    String lead,
    Function<V, Optional<String>> value) {

  /** Returns the shorthand of a finding: its heading, and the words of a value. */
  public static <V> Wording<V> of(Finding<V> finding, String heading, Function<V, String> value) {
    return of(finding, heading, "", value);
  }

  /** Returns the shorthand of a finding: its heading, what leads to the value, and its words. */
  public static <V> Wording<V> of(
      Finding<V> finding, String heading, String lead, Function<V, String> value) {
    return new Wording<>(finding, heading, any -> "", lead, v -> Optional.of(value.apply(v)));
  }

  /** Returns this with the conditions of a value, which stand behind the heading. */
  public Wording<V> under(Function<V, String> which) {
    return new Wording<>(finding, heading, which, lead, value);
  }

  /** Returns this with words for some values only; others have none in shorthand. */
  public Wording<V> where(Function<V, Optional<String>> some) {
    return new Wording<>(finding, heading, conditions, lead, some);
  }
}
