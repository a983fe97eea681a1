package org.isopter.model.note.habit;

import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Objects;
import java.util.Set;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.isopter.model.note.grammar.Common;
import org.isopter.model.note.grammar.Denial;
import org.isopter.model.note.grammar.Grammar;
import org.isopter.model.note.item.Grammars;
import org.isopter.model.note.token.Lexer;
import org.isopter.model.note.token.Token;
import org.isopter.model.phrase.PhraseFile;
import org.isopter.model.phrase.PhraseLine;

/** The phrases that come with the library: a file for each language. */
final class StandardPhrases {

  private static final List<String> LANGUAGES = List.of("en", "fr", "de", "es");

  static final List<PhraseLine> LINES = lines();

  /** The words that may put a clause into another time or give it to another person. */
  static final Set<String> OTHER = of("other");

  /** The words that a sentence needs and that say nothing of an eye. */
  private static final Set<String> EMPTY = of("pass");

  /** The words that say that a clause is about what is to be done. */
  static final Set<String> PLAN = of("plan");

  /** The words that deny what follows, and those that join the last member of a list. */
  static final Set<String> DENIAL = of("denial");

  static final Set<String> OR = of("or");

  /** The words that tell of the past, and those that set another time apart from it. */
  static final Set<String> PAST = of("past");

  static final Set<String> APART = of("apart");

  /** The words of a diagnosis, which before a colon only says what the note is about. */
  static final Set<String> LABEL = of("label");

  /** The words for a person who is not the patient. */
  static final Set<String> PERSON = of("person");

  /** The words for a person who was named before. */
  static final Set<String> PRONOUN = of("pronoun");

  /** The words that start another part of the notes: fhx, pmh. */
  static final Set<String> SECTION = of("section");

  /** The words with which what was found today starts. */
  static final Set<String> NOW = of("now");

  /** The words at the start of a clause that take back what stands before it. */
  static final Set<String> RETRACT = of("retract");

  /** The words that are no slip of spelling, however near they come to a known one. */
  private static final Set<String> WHOLE = of("word");

  static final Phrasebook BOOK = Phrasebook.of(said(LINES), grammarWords());

  private StandardPhrases() {}

  /** Returns the words that the grammar reads. */
  static Set<String> grammarWords() {
    Set<String> words = new HashSet<>();
    Stream.concat(
            Grammars.ALL.stream().flatMap(Grammar::words),
            Stream.concat(Common.SIDES.words().stream(), Common.ABSENCES.words().stream()))
        .forEach(phrase -> words.addAll(Lexer.words(phrase)));
    words.addAll(Denial.WORDS);
    List.of(OTHER, PERSON, PLAN, SECTION, LABEL, NOW, RETRACT, EMPTY).forEach(words::addAll);
    return words;
  }

  /** Says whether a word only belongs to the sentence; a lone capital may stand for something. */
  static boolean saysNothing(Token token) {
    return EMPTY.contains(token.text())
        && (token.text().length() > 1 || token.seen().equals(token.text()));
  }

  /** Says whether a word is meant as it stands: fellow is no slip of follow. */
  static boolean isWhole(Token token) {
    return WHOLE.contains(token.text());
  }

  static List<PhraseLine> said(List<PhraseLine> lines) {
    return lines.stream().filter(line -> line.kind().equals("say")).toList();
  }

  private static Set<String> of(String kind) {
    return LINES.stream()
        .filter(line -> line.kind().equals(kind))
        .flatMap(line -> line.phrases().stream())
        .collect(Collectors.toUnmodifiableSet());
  }

  private static List<PhraseLine> lines() {
    List<PhraseLine> lines = new ArrayList<>();
    for (String language : LANGUAGES) {
      lines.addAll(PhraseFile.read(text("phrases-" + language + ".tsv")).orThrow());
    }
    return List.copyOf(lines);
  }

  private static String text(String name) {
    try (InputStream in =
        Objects.requireNonNull(StandardPhrases.class.getResourceAsStream(name), name)) {
      return new String(in.readAllBytes(), StandardCharsets.UTF_8);
    } catch (IOException unreadable) {
      throw new UncheckedIOException(unreadable);
    }
  }
}
