package org.isopter.model.note.habit;

import java.util.ArrayList;
import java.util.Collection;
import java.util.Collections;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;
import org.isopter.model.note.token.Abbreviations;
import org.isopter.model.note.token.DecimalComma;
import org.isopter.model.note.token.Lexer;
import org.isopter.model.note.token.NumberWords;
import org.isopter.model.note.token.Spelling;
import org.isopter.model.note.token.SpokenNumbers;
import org.isopter.model.note.token.Token;
import org.isopter.model.note.word.WithoutAccents;
import org.isopter.model.note.word.WordFiles;
import org.isopter.model.note.word.WordRole;
import org.isopter.model.phrase.PhraseLine;
import org.isopter.model.value.LowerCase;

/**
 * What people write, and the words of the grammar that it stands for.
 *
 * <p>The longest phrase that fits is taken. A phrase that means one thing in one language and
 * another in another is taken in the languages that the other phrases of the note are of, and left
 * alone where that does not decide.
 */
public final class Phrasebook {

  private static final Set<String> POINT = Set.of("-", "en");

  private final Map<String, List<PhraseRow>> rows;
  private final Spelling spelling;

  /** The words that are no slip of another. */
  private final Set<String> known;

  /** The words of the grammar, which are of no language. */
  private final Set<String> grammar;

  private Phrasebook(Map<String, List<PhraseRow>> rows, Set<String> known, Set<String> grammar) {
    this.rows = rows;
    this.known = known;
    this.grammar = grammar;
    rows.values().forEach(list -> list.sort(PhraseRow.LONGEST_FIRST));
    rows.values().stream()
        .flatMap(List::stream)
        .flatMap(row -> row.phrase().stream())
        .forEach(word -> known.add(LowerCase.of(word)));
    this.spelling = new Spelling(known);
  }

  /**
   * Makes a book.
   *
   * @param lines what people write
   * @param grammar the words that the grammar knows
   */
  static Phrasebook of(Collection<PhraseLine> lines, Set<String> grammar) {
    return new Phrasebook(rows(lines, grammar), new HashSet<>(grammar), Set.copyOf(grammar));
  }

  /**
   * Returns this book with more lines before its own, and without its lines of some meanings.
   *
   * @param lines what else people write
   * @param left the meanings, as a file writes them, whose lines are left out
   */
  Phrasebook with(Collection<PhraseLine> lines, Set<String> left) {
    Map<String, List<PhraseRow>> all = rows(lines, grammar);
    rows.forEach(
        (first, list) ->
            list.stream()
                .filter(row -> !left.contains(row.said()))
                .forEach(row -> all.computeIfAbsent(first, x -> new ArrayList<>()).add(row)));
    return new Phrasebook(all, new HashSet<>(known), grammar);
  }

  private static Map<String, List<PhraseRow>> rows(
      Collection<PhraseLine> lines, Set<String> grammar) {
    Map<String, List<PhraseRow>> rows = new HashMap<>();
    for (PhraseRow row : written(lines, grammar)) {
      rows.computeIfAbsent(row.first(), any -> new ArrayList<>()).add(row);
    }
    return rows;
  }

  private static List<PhraseRow> written(Collection<PhraseLine> lines, Set<String> grammar) {
    List<PhraseRow> rows = new ArrayList<>();
    for (PhraseLine line : lines) {
      List<Token> meaning = Lexer.read(line.meaning());
      for (String phrase : phrases(line, meaning, grammar)) {
        rows.add(PhraseRow.of(phrase, line, meaning));
      }
    }
    return rows;
  }

  /** Returns the phrases, and what they stand for where one of them is only a part of it. */
  private static List<String> phrases(PhraseLine line, List<Token> tokens, Set<String> grammar) {
    List<String> phrases = new ArrayList<>(line.phrases());
    WithoutAccents.of(line).stream()
        .filter(plain -> !grammar.containsAll(Lexer.words(PhraseRow.bare(plain))))
        .forEach(phrases::add);
    List<String> meaning = tokens.stream().map(Token::text).toList();
    boolean part =
        meaning.size() > 1
            && line.phrases().stream()
                .map(PhraseRow::bare)
                .map(Lexer::words)
                .anyMatch(
                    p -> p.size() < meaning.size() && Collections.indexOfSubList(meaning, p) >= 0);
    if (part) {
      phrases.add(line.meaning());
    }
    return phrases;
  }

  boolean knows(String word) {
    return spelling.knows(word);
  }

  /** Returns the tokens in the words of the grammar, each at the place of what was written. */
  public List<Token> apply(List<Token> written) {
    Set<String> languages = languages(written.stream().map(this::mended).toList());
    NumberWords numbers = NumberWords.in(languages);
    List<Token> tokens = SpokenNumbers.read(written, numbers).stream().map(this::mended).toList();
    List<Token> out = new ArrayList<>();
    int at = 0;
    while (at < tokens.size()) {
      Optional<PhraseRow> row = clear(longest(tokens, at, isHeading(out)), languages);
      int length = row.map(found -> found.phrase().size()).orElse(1);
      List<Token> place = tokens.subList(at, at + length);
      row.ifPresentOrElse(found -> say(found, place, out), () -> out.add(place.get(0)));
      if (length > 1 && endsSentence(tokens, at + length)) {
        out.add(place.get(length - 1));
      }
      at += length;
    }
    List<Token> said =
        withoutEmptyWords(
            Abbreviations.joined(
                Articles.apart(out, languages), this::maySayAll, OtherTimes::isSide));
    boolean comma = languages.stream().anyMatch(language -> !POINT.contains(language));
    return SideLetters.read(DecimalComma.read(said, comma), languages);
  }

  /** Says whether a word can be a sentence of its own. */
  private boolean maySayAll(String word) {
    return knows(word) && !WordFiles.is(WordRole.OPEN, word);
  }

  private Token mended(Token token) {
    return StandardPhrases.isWhole(token) ? token : spelling.mend(token);
  }

  /** Says whether the full stop of an abbreviation also ends the sentence: bds. Tensio. */
  private static boolean endsSentence(List<Token> tokens, int end) {
    if (tokens.get(end - 1).kind() != Token.Kind.BREAK || end == tokens.size()) {
      return false;
    }
    Token next = tokens.get(end);
    return next.kind() == Token.Kind.WORD
        && next.seen().length() > 1
        && Character.isUpperCase(next.seen().charAt(0));
  }

  /** Leaves out the words that only a sentence needs; behind a mark they belong to it: n/a. */
  private static List<Token> withoutEmptyWords(List<Token> tokens) {
    List<Token> said = new ArrayList<>();
    for (Token token : tokens) {
      boolean mark = !said.isEmpty() && said.get(said.size() - 1).is("/");
      if (mark || !StandardPhrases.saysNothing(token)) {
        said.add(token);
      }
    }
    return List.copyOf(said);
  }

  /** Returns the languages of the phrases that mean one thing only. */
  private Set<String> languages(List<Token> tokens) {
    Set<String> languages = new HashSet<>();
    for (int at = 0; at < tokens.size(); at++) {
      List<PhraseRow> found = longest(tokens, at, false);
      Set<String> of = found.stream().map(PhraseRow::language).collect(Collectors.toSet());
      if (of.size() == 1 && tells(found.get(0).phrase())) {
        languages.addAll(of);
      }
      NumberWords.languageOf(tokens.get(at).text()).ifPresent(languages::add);
    }
    return languages;
  }

  /** Says whether a phrase tells of which language it is. */
  private boolean tells(List<String> phrase) {
    String first = phrase.get(0);
    return first.length() > 1 && (phrase.size() > 1 || !grammar.contains(first));
  }

  /** Says whether what was said last only starts a part of the note: O/E, SLE:. */
  private static boolean isHeading(List<Token> out) {
    return !out.isEmpty()
        && out.get(out.size() - 1).is(",")
        && !out.get(out.size() - 1).seen().equals(",");
  }

  /** Returns the longest rows that fit here. */
  private List<PhraseRow> longest(List<Token> tokens, int at, boolean behindHeading) {
    List<PhraseRow> fitting =
        rows.getOrDefault(tokens.get(at).text(), List.of()).stream()
            .filter(row -> row.fits(tokens, at, behindHeading))
            .toList();
    return fitting.stream().filter(row -> row.isLike(fitting.get(0))).toList();
  }

  private static Optional<PhraseRow> clear(List<PhraseRow> rows, Set<String> languages) {
    Set<String> meanings = rows.stream().map(PhraseRow::said).collect(Collectors.toSet());
    if (meanings.size() < 2) {
      return rows.stream().findFirst();
    }
    List<PhraseRow> spoken =
        rows.stream().filter(row -> languages.contains(row.language())).toList();
    boolean foreign = languages.stream().anyMatch(language -> !POINT.contains(language));
    List<PhraseRow> fitting =
        foreign
            ? spoken.stream().filter(row -> !POINT.contains(row.language())).toList()
            : rows.stream().filter(row -> POINT.contains(row.language())).toList();
    boolean one = fitting.stream().map(PhraseRow::said).distinct().count() == 1;
    return one ? fitting.stream().findFirst() : Optional.empty();
  }

  private static void say(PhraseRow row, List<Token> place, List<Token> out) {
    Token first = place.get(0);
    String seen = Token.seen(place);
    int end = place.get(place.size() - 1).end();
    for (Token word : row.meaning()) {
      out.add(
          new Token(
              word.kind(), word.text(), seen, first.start(), end, first.line(), first.column()));
    }
  }
}
