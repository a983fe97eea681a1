package org.isopter.mapper.foreign.vocabulary;

import java.util.List;
import java.util.Set;
import org.isopter.mapper.json.Raw;

/**
 * What a code is about, as far as shorthand under it may speak.
 *
 * @param headings the words that a note would begin with, tried in their order
 * @param finds the findings that such a note may tell; none stands for every finding
 */
public record Topic(List<String> headings, Set<String> finds) {

  /** The topic under which anything may be said. */
  public static final Topic ANY = new Topic(List.of(), Set.of());

  public Topic {
    headings = List.copyOf(headings);
    finds = Set.copyOf(finds);
  }

  /** Reads a row of the table of topics. */
  static Topic of(Raw row) {
    return new Topic(texts(row, "headings"), Set.copyOf(texts(row, "finds")));
  }

  /** Says whether shorthand under the code may tell a finding. */
  boolean holds(String finding) {
    return finds.isEmpty() || finds.contains(finding);
  }

  private static List<String> texts(Raw row, String name) {
    return row.list(name).stream().map(text -> text.string().orElseThrow()).toList();
  }
}
