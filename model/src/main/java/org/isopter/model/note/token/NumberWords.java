package org.isopter.model.note.token;

import java.util.Collection;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;
import org.isopter.model.note.word.WordFiles;
import org.isopter.model.note.word.WordRole;
import org.isopter.model.phrase.PhraseLine;

/**
 * What the words of numbers stand for in the languages of a note: digits, a sign, a share of ten.
 *
 * <p>English ones hold in every note: a note in another language may name its figures in English.
 */
public final class NumberWords {

  private static final String ENGLISH = "en";

  /** A shorter word may be one of another language: sept, once, elf. */
  private static final int TELLING = 5;

  /** Stands between tens and ones: vingt et un, treinta y dos. */
  private static final String JOINER = "and";

  private static final Map<String, Map<String, String>> WORDS = words();

  private final Map<String, String> meanings = new HashMap<>();

  private NumberWords(Collection<String> languages) {
    meanings.putAll(WORDS.getOrDefault(ENGLISH, Map.of()));
    languages.forEach(language -> meanings.putAll(WORDS.getOrDefault(language, Map.of())));
  }

  /** Returns the words of English and of other languages. */
  public static NumberWords in(Collection<String> languages) {
    return new NumberWords(languages);
  }

  /** Returns the one language other than English that has such a number word, if it is clear. */
  public static Optional<String> languageOf(String word) {
    Set<String> languages =
        WORDS.entrySet().stream()
            .filter(entry -> entry.getValue().containsKey(word))
            .map(Map.Entry::getKey)
            .collect(Collectors.toSet());
    return word.length() >= TELLING && languages.size() == 1 && !languages.contains(ENGLISH)
        ? languages.stream().findFirst()
        : Optional.empty();
  }

  /** Says whether a word stands for a number, or a part of one, in any of the languages. */
  public static boolean isNumber(String word) {
    return WORDS.values().stream().anyMatch(meanings -> meanings.containsKey(word));
  }

  private static Map<String, Map<String, String>> words() {
    Map<String, Map<String, String>> words = new LinkedHashMap<>();
    for (PhraseLine line : WordFiles.lines(WordRole.NUMBER)) {
      Map<String, String> meanings = words.computeIfAbsent(line.language(), any -> new HashMap<>());
      line.phrases().forEach(phrase -> meanings.put(phrase, line.meaning()));
    }
    return words;
  }

  /** Returns the number that a word stands for, from a bound on and below another. */
  Optional<Integer> value(String word, int from, int below) {
    return meaning(word)
        .filter(digits -> digits.matches("\\d+"))
        .map(Integer::valueOf)
        .filter(n -> n >= from && n < below);
  }

  /** Returns plus or minus for a word that stands for it. */
  Optional<String> sign(String word) {
    return meaning(word).filter(List.of("+", "-")::contains);
  }

  /** Returns what the number before a word is a share of: 10 for dixièmes. */
  Optional<String> share(String word) {
    return meaning(word).filter(m -> m.startsWith("/")).map(m -> m.substring(1));
  }

  /** Says whether a word stands between tens and ones. */
  boolean joins(String word) {
    return meaning(word).filter(JOINER::equals).isPresent();
  }

  private Optional<String> meaning(String word) {
    return Optional.ofNullable(meanings.get(word));
  }
}
