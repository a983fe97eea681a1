package org.isopter.mapper.foreign.vocabulary;

import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import org.isopter.mapper.json.Raw;
import org.isopter.model.text.Memo;

/**
 * Phrases that make something else of a text where they stand in it, of some findings or of all.
 */
final class ChangingPhrases {

  private final Map<String, Set<String>> findings = new LinkedHashMap<>();
  private final Memo<List<String>> found = new Memo<>(this::all);

  /** Reads tables; a row without {@code of} holds for every finding. */
  ChangingPhrases(Raw tables, String... names) {
    for (String name : names) {
      for (Raw row : tables.objects(name)) {
        Set<String> of = of(row);
        for (Raw phrase : row.list("spellings")) {
          findings
              .computeIfAbsent(phrase.string().orElseThrow(), any -> new LinkedHashSet<>())
              .addAll(of);
        }
      }
    }
  }

  /** Returns the first phrase in a text that counts for a finding. */
  Optional<String> in(String text, String finding) {
    return text.isBlank()
        ? Optional.empty()
        : found.of(text).stream().filter(phrase -> counts(phrase, finding)).findFirst();
  }

  private boolean counts(String phrase, String finding) {
    Set<String> of = findings.getOrDefault(phrase, Set.of());
    boolean acuity = finding.endsWith(Effect.ACUITY);
    return of.contains("") || of.contains(finding) || (acuity && of.contains(Effect.ACUITY));
  }

  /** A stem, marked by a star, may begin or end within a word. */
  private List<String> all(String text) {
    String spaced = " " + CodeText.words(text) + " ";
    return findings.keySet().stream()
        .filter(
            phrase ->
                phrase.endsWith("*")
                    ? spaced.contains(phrase.substring(0, phrase.length() - 1))
                    : spaced.contains(" " + phrase + " "))
        .toList();
  }

  private static Set<String> of(Raw row) {
    Set<String> of = new LinkedHashSet<>();
    row.list("of").forEach(finding -> of.add(finding.string().orElseThrow()));
    return of.isEmpty() ? Set.of(row.string("of").orElse("")) : of;
  }
}
