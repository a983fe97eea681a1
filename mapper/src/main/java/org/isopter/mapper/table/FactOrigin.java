package org.isopter.mapper.table;

import java.util.List;
import java.util.Set;

/**
 * Where a fact was read.
 *
 * @param source the number or the name of the input
 * @param line the line in it, from 1; 0 where the input is one document
 * @param rules the ids of the rules by which it was translated, sorted; none for what is ours
 */
public record FactOrigin(String source, long line, List<String> rules) {

  public FactOrigin {
    rules = List.copyOf(rules);
  }

  /** Returns the place of what is ours, read as it stands. */
  public static FactOrigin of(String source, long line) {
    return new FactOrigin(source, line, List.of());
  }

  /** Returns the place of what was translated. */
  public static FactOrigin of(String source, long line, Set<String> rules) {
    return new FactOrigin(source, line, rules.stream().sorted().toList());
  }
}
