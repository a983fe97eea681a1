package org.isopter.mapper.pool;

import java.util.Collection;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.stream.Collectors;

/** Finds which of many strings stand anywhere in a text, in one pass over it. */
final class Search {

  private static final int START = 8;

  private final Map<String, List<String>> byStart;

  private Search(Map<String, List<String>> byStart) {
    this.byStart = byStart;
  }

  static Search of(Collection<String> wanted) {
    return new Search(
        new HashMap<>(
            wanted.stream().collect(Collectors.groupingBy(one -> one.substring(0, START)))));
  }

  Set<String> in(String text) {
    Set<String> found = new HashSet<>();
    for (int at = 0; at + START <= text.length(); at++) {
      for (String one : byStart.getOrDefault(text.substring(at, at + START), List.of())) {
        if (text.startsWith(one, at)) {
          found.add(one);
        }
      }
    }
    return found;
  }
}
