package org.isopter.mapper.foreign.vocabulary;

import java.util.LinkedHashMap;
import java.util.Map;
import java.util.Optional;
import org.isopter.mapper.foreign.ledger.RuleId;
import org.isopter.mapper.json.Raw;
import org.isopter.model.value.Site;

/**
 * What a code of others says in the words of the catalogue.
 *
 * @param rule the rule that lets it say so
 * @param display the name that its code system gives it
 * @param finding the finding, or {@code acuity} where distance and near are not told apart
 * @param site the eye that the code names
 * @param part the part of the finding that a value under this code fills
 * @param parts the parts that the code itself fills, by key, each with the word of its answer
 * @param notation the notation that the code fixes
 * @param method the word of the technique that the code names
 * @param unit the UCUM code of the unit that a number under it is in
 * @param topic what a group of findings is about
 */
public record Effect(
    String rule,
    String display,
    Optional<String> finding,
    Optional<Site> site,
    Optional<String> part,
    Map<String, String> parts,
    Optional<String> notation,
    Optional<String> method,
    Optional<String> unit,
    Optional<String> topic) {

  /** The finding of an acuity of which neither distance nor near is said. */
  public static final String ACUITY = "acuity";

  public Effect {
    parts = Map.copyOf(parts);
  }

  /** Reads a row of the table of codes. */
  static Effect of(Raw row) {
    Map<String, String> parts = new LinkedHashMap<>();
    row.object("parts")
        .ifPresent(
            all -> all.members().keySet().forEach(k -> parts.put(k, all.string(k).orElseThrow())));
    return new Effect(
        row.string("rule").orElse(RuleId.CODE_ALIAS),
        row.string("display").orElse(""),
        row.string("finding"),
        row.string("site").map(Effect::site),
        row.string("part"),
        parts,
        row.string("notation"),
        row.string("method"),
        row.string("unit"),
        row.string("topic"));
  }

  static Site site(String word) {
    for (Site site : Site.values()) {
      if (site.word().equals(word)) {
        return site;
      }
    }
    throw new IllegalArgumentException(word + " is no site");
  }
}
