package org.isopter.model.note;

import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.isopter.model.note.grammar.Common;
import org.isopter.model.note.grammar.Grammar;
import org.isopter.model.note.grammar.Headings;
import org.isopter.model.note.item.Grammars;
import org.isopter.model.note.token.Lexer;
import org.isopter.model.note.token.NotRead;
import org.isopter.model.note.token.Token;
import org.isopter.model.note.word.WordFiles;
import org.isopter.model.note.word.WordRole;
import org.isopter.model.text.NearestWord;
import org.isopter.model.value.LowerCase;
import org.isopter.model.value.Site;

/** The words that help whoever wrote an item that was not read. */
final class Advice {

  /** Items that show the form, for where nothing is nearer. */
  static final String START = "VA R 6/9; IOP R 14; disc R pink";

  private static final int SHORTEST = 3;

  private Advice() {}

  /** Says whether a form only shows how such items are written, and is no mended item. */
  static boolean isExample(String form, String item) {
    String seen = LowerCase.of(item);
    boolean mended = !NearestWord.of(seen, Stream.of(LowerCase.of(form))).isEmpty();
    boolean example = Grammars.ALL.stream().anyMatch(grammar -> grammar.example().equals(form));
    return !mended && example;
  }

  /**
   * Says whether a form has other figures or eyes than the item, or drops what denies: whoever
   * copied it would record something else.
   */
  static boolean saysOther(String form, String item) {
    List<Token> written = Lexer.read(item);
    List<Token> said = Lexer.read(form);
    boolean denied =
        written.stream().anyMatch(Advice::denies) && said.stream().noneMatch(Advice::denies);
    return denied || !figures(form).equals(figures(item)) || !eyes(said).containsAll(eyes(written));
  }

  private static boolean denies(Token token) {
    return WordFiles.is(WordRole.NO, token.text());
  }

  private static Set<String> figures(String text) {
    return Stream.of(text.split("\\D+", -1))
        .filter(digits -> !digits.isEmpty())
        .collect(Collectors.toSet());
  }

  private static Set<Site> eyes(List<Token> tokens) {
    return tokens.stream()
        .flatMap(token -> Common.side(token).stream())
        .collect(Collectors.toSet());
  }

  static String why(NotRead notRead, Token at, Headings headings) {
    if (!notRead.isWord()) {
      return notRead.why();
    }
    if (isCommaNumber(at)) {
      return "\""
          + at.seen()
          + "\" may be one number or two: write a point, or a space behind the comma";
    }
    boolean starts = headings.at(List.of(at), 0).filter(found -> found.at() == 0).isPresent();
    return starts ? notRead.why() + ": put \";\" before a new item" : notRead.why();
  }

  /**
   * Returns forms near to an item that was not read, the nearest first; not all of them are read.
   *
   * @param item the item, word for word
   * @param from where it starts in the note
   */
  static Stream<String> near(
      NotRead notRead, Token at, String item, int from, Optional<Grammar> grammar) {
    // Nothing is looked for before a form is wanted: most notes are read without advice.
    Stream<String> mended =
        Stream.of(at)
            .filter(token -> notRead.isWord())
            .flatMap(token -> meant(token, grammar))
            .filter(word -> !word.equalsIgnoreCase(at.text()))
            .map(word -> put(item, at.start() - from, at.end() - from, word));
    return Stream.of(
            notRead.nearest().stream(),
            mended,
            grammar.map(Grammar::example).stream(),
            Stream.of(START))
        .flatMap(forms -> forms);
  }

  private static String put(String item, int start, int end, String word) {
    return item.substring(0, Math.max(0, start))
        + word
        + item.substring(Math.min(item.length(), end));
  }

  /** Returns the words and phrases that a word which is not understood may be meant for. */
  private static Stream<String> meant(Token at, Optional<Grammar> grammar) {
    if (isCommaNumber(at)) {
      return Stream.of(at.text().replace(',', '.'));
    }
    return Stream.concat(
        NearestWord.of(at.text(), known(grammar)).stream(),
        grammar.stream().flatMap(g -> phrases(at.text(), g.words())));
  }

  /** Returns the phrases of several words that the seen word is one of. */
  private static Stream<String> phrases(String seen, Stream<String> words) {
    return words
        .filter(word -> seen.length() > SHORTEST && word.contains(" ") && word.contains(seen))
        .filter(word -> Lexer.words(word).contains(seen))
        .distinct();
  }

  private static boolean isCommaNumber(Token at) {
    return at.text().matches("\\d+,\\d+");
  }

  private static Stream<String> known(Optional<Grammar> grammar) {
    return grammar
        .map(Grammar::words)
        .orElseGet(() -> Grammars.ALL.stream().flatMap(Grammar::words));
  }
}
