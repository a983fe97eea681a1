package org.isopter.mapper.foreign.vocabulary;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.regex.Pattern;
import org.isopter.model.text.Memo;

/**
 * Reads the words of a code: the title of one finding, and beside it only words that are known to
 * say how it was tested. One word that is not known makes all of it unread, so that no "target" and
 * no "not" can be lost.
 */
public final class CodeText {

  private static final Pattern DOTS = Pattern.compile("[.'’]");
  private static final Pattern GAPS = Pattern.compile("[^\\p{L}\\p{N}%°+]+");

  private static final Memo<String> WORDS = new Memo<>(CodeText::plain);

  /** Nobody writes longer titles, and trying all splits of a long text takes long. */
  private static final int MOST_WORDS = 14;

  private final Vocabulary vocabulary;

  public CodeText(Vocabulary vocabulary) {
    this.vocabulary = vocabulary;
  }

  /** Returns the words of a text in lower case, without dots, hyphens and brackets. */
  public static String words(String text) {
    return text.isEmpty() ? text : WORDS.of(text);
  }

  private static String plain(String text) {
    String lower = DOTS.matcher(text.toLowerCase(Locale.ROOT)).replaceAll("");
    return GAPS.matcher(lower).replaceAll(" ").strip();
  }

  /** Returns what the words say, the title first; nothing where a word of them is not known. */
  public Optional<List<Effect>> read(String text) {
    return vocabulary.titlesRead().of(text);
  }

  /** Reads a text that was not read before. */
  Optional<List<Effect>> titled(String text) {
    String words = words(text);
    List<String> all = List.of(words.split(" "));
    if (words.isEmpty() || all.size() > MOST_WORDS || isAsked(text)) {
      return Optional.empty();
    }
    for (int length = all.size(); length > 0; length--) {
      for (int from = 0; from + length <= all.size(); from++) {
        Optional<List<Effect>> read = around(all, from, from + length);
        if (read.isPresent()) {
          return read;
        }
      }
    }
    return Optional.empty();
  }

  /** Returns what words say that only tell how something was tested; empty text says nothing. */
  public Optional<List<Effect>> conditions(String text) {
    return vocabulary.conditionsRead().of(text);
  }

  /** Reads conditions that were not read before. */
  Optional<List<Effect>> readConditions(String text) {
    String words = words(text);
    List<String> all = words.isEmpty() ? List.of() : List.of(words.split(" "));
    return all.size() > MOST_WORDS || isAsked(text) ? Optional.empty() : conditions(all, false);
  }

  /** Nobody is sure of what stands with a question mark. */
  private static boolean isAsked(String text) {
    return text.indexOf('?') >= 0 || text.indexOf('？') >= 0;
  }

  private Optional<List<Effect>> around(List<String> all, int from, int to) {
    Optional<Effect> title = vocabulary.titleOf(String.join(" ", all.subList(from, to)));
    Optional<List<Effect>> before = title.flatMap(t -> conditions(all.subList(0, from), true));
    Optional<List<Effect>> behind =
        before.flatMap(b -> conditions(all.subList(to, all.size()), true));
    if (behind.isEmpty()) {
      return Optional.empty();
    }
    List<Effect> read = new ArrayList<>(List.of(title.orElseThrow()));
    read.addAll(before.orElseThrow());
    read.addAll(behind.get());
    boolean fit = read.stream().allMatch(effect -> vocabulary.fits(title.get(), effect));
    return fit ? Optional.of(read) : Optional.empty();
  }

  /** Reads conditions; beside a title its abbreviation may stand, or the other way round. */
  private Optional<List<Effect>> conditions(List<String> words, boolean titles) {
    if (words.isEmpty()) {
      return Optional.of(List.of());
    }
    for (int length = words.size(); length > 0; length--) {
      String phrase = String.join(" ", words.subList(0, length));
      Optional<Effect> again = titles ? vocabulary.titleOf(phrase) : Optional.empty();
      Optional<Effect> effect = vocabulary.condition(phrase).or(() -> again);
      boolean filler = length == 1 && vocabulary.habits().words().isFiller(phrase);
      if (effect.isPresent() || filler) {
        Optional<List<Effect>> rest = conditions(words.subList(length, words.size()), titles);
        if (rest.isPresent()) {
          List<Effect> read = new ArrayList<>(effect.stream().toList());
          read.addAll(rest.get());
          return Optional.of(read);
        }
      }
    }
    return Optional.empty();
  }
}
