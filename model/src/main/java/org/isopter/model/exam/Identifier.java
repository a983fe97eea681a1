package org.isopter.model.exam;

import java.util.Optional;
import org.isopter.model.value.TextCheck;

/**
 * A business identifier.
 *
 * @param system the URI of who gives it out, when known
 * @param value the identifier itself
 */
public record Identifier(Optional<String> system, String value) {

  public Identifier {
    TextCheck.require("id", value);
    system.ifPresent(uri -> TextCheck.require("system", uri));
  }

  /** Returns an identifier whose giver is not stated. */
  public static Identifier of(String value) {
    return new Identifier(Optional.empty(), value);
  }

  /** Returns an identifier with the URI of who gives it out. */
  public static Identifier of(String system, String value) {
    return new Identifier(Optional.of(system), value);
  }

  /** Returns {@code system|value}, or the value alone. */
  @Override
  public String toString() {
    return system.map(uri -> uri + "|" + value).orElse(value);
  }
}
