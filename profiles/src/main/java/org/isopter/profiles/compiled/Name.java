package org.isopter.profiles.compiled;

import java.util.Map;
import java.util.concurrent.ConcurrentHashMap;

/** The name of a member; there is one object for each, so that comparing costs nothing. */
final class Name {

  private static final Map<String, Name> ALL = new ConcurrentHashMap<>();

  private final String text;

  private Name(String text) {
    this.text = text;
  }

  /** Returns the name; the names that are asked for are few, and none comes from a resource. */
  static Name of(String text) {
    return ALL.computeIfAbsent(text, Name::new);
  }

  @Override
  public String toString() {
    return text;
  }
}
