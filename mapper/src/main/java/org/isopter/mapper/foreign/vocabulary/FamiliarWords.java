package org.isopter.mapper.foreign.vocabulary;

import java.util.Collection;
import java.util.HashSet;
import java.util.List;
import java.util.Set;
import java.util.regex.Pattern;
import org.isopter.mapper.json.Raw;

/**
 * The single words of all names and phrases that are known. A name of other words only may say
 * anything, in whatever language; one of these words alone says nothing that is not read.
 */
final class FamiliarWords {

  /** Tables of phrases that change what they stand beside. */
  private static final Set<String> CHANGING =
      Set.of(
          "doubts",
          "denials",
          "otherwise",
          "otherwiseNamed",
          "drugs",
          "ofPanels",
          "harmless",
          "harmlessWords",
          "togetherHarmful",
          "otherAcuity",
          "otherCorrection");

  private static final Pattern NUMBER = Pattern.compile("\\d+");

  private final Set<String> words = new HashSet<>();

  /** Gathers the words of the tables. */
  FamiliarWords(Raw.Obj tables) {
    tables
        .members()
        .forEach(
            (name, table) -> {
              if (!CHANGING.contains(name)) {
                gather(table);
              }
            });
  }

  /** Adds the words of names. */
  void add(Collection<String> names) {
    names.forEach(name -> words.addAll(List.of(CodeText.words(name).split(" ", -1))));
  }

  /** Returns true if a text has no word that is not known. */
  boolean areAll(String text) {
    return List.of(CodeText.words(text).split(" ", -1)).stream()
        .allMatch(word -> word.isEmpty() || words.contains(word) || NUMBER.matcher(word).matches());
  }

  private void gather(Raw value) {
    if (value instanceof Raw.Obj row) {
      gather(Raw.of(row.list("spellings")));
      row.string("display").ifPresent(display -> add(List.of(display)));
    } else if (value instanceof Raw.Arr list) {
      list.items().forEach(this::gather);
    } else {
      value.string().filter(text -> text.indexOf('|') < 0).ifPresent(text -> add(List.of(text)));
    }
  }
}
