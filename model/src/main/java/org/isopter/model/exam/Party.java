package org.isopter.model.exam;

import java.util.Optional;
import org.isopter.model.value.TextCheck;

/**
 * A person in a role: by identifier, by name, or by both.
 *
 * @param identifier the identifier, when known
 * @param name the name as written, when known
 */
public record Party(Optional<Identifier> identifier, Optional<String> name) {

  public Party {
    name.ifPresent(text -> TextCheck.require("name", text));
    if (identifier.isEmpty() && name.isEmpty()) {
      throw new IllegalArgumentException("a person needs an identifier or a name");
    }
  }

  /** Returns a person known by identifier alone. */
  public static Party of(Identifier identifier) {
    return new Party(Optional.of(identifier), Optional.empty());
  }

  /** Returns a person known by name alone. */
  public static Party named(String name) {
    return new Party(Optional.empty(), Optional.of(name));
  }
}
