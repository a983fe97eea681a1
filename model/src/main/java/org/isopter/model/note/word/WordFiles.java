package org.isopter.model.note.word;

import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.EnumMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Set;
import org.isopter.model.phrase.PhraseFile;
import org.isopter.model.phrase.PhraseLine;

/** The files of phrases that come with the library: one for each language, read at the start. */
public final class WordFiles {

  private static final List<String> LANGUAGES = List.of("en", "fr", "de", "es");

  private static final Map<WordRole, List<PhraseLine>> LINES = lines();

  private static final Map<WordRole, Set<String>> WORDS = words();

  private WordFiles() {}

  /** Returns the lines of a role, in the order of the files. */
  public static List<PhraseLine> lines(WordRole role) {
    return Objects.requireNonNull(LINES.get(role));
  }

  /** Returns the words and phrases of a role, as the files write them, in their order. */
  public static Set<String> of(WordRole role) {
    return Objects.requireNonNull(WORDS.get(role));
  }

  /** Says whether a word in lower case has a role. */
  public static boolean is(WordRole role, String word) {
    return of(role).contains(word);
  }

  private static Map<WordRole, Set<String>> words() {
    Map<WordRole, Set<String>> words = new EnumMap<>(WordRole.class);
    for (WordRole role : WordRole.values()) {
      Set<String> phrases = new LinkedHashSet<>();
      lines(role).forEach(line -> phrases.addAll(line.phrases()));
      words.put(role, phrases);
    }
    return words;
  }

  private static Map<WordRole, List<PhraseLine>> lines() {
    Map<WordRole, List<PhraseLine>> lines = new EnumMap<>(WordRole.class);
    for (WordRole role : WordRole.values()) {
      lines.put(role, new ArrayList<>());
    }
    for (String language : LANGUAGES) {
      for (PhraseLine line : PhraseFile.read(text("phrases-" + language + ".tsv")).orThrow()) {
        WordRole role =
            WordRole.of(line.kind()).orElseThrow(() -> new IllegalStateException(line.toString()));
        Objects.requireNonNull(lines.get(role))
            .add(role == WordRole.SAY ? line : WithoutAccents.added(line));
      }
    }
    return lines;
  }

  private static String text(String name) {
    try (InputStream in = Objects.requireNonNull(WordFiles.class.getResourceAsStream(name), name)) {
      return new String(in.readAllBytes(), StandardCharsets.UTF_8);
    } catch (IOException unreadable) {
      throw new UncheckedIOException(unreadable);
    }
  }
}
