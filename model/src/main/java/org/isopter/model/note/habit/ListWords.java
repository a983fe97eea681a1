package org.isopter.model.note.habit;

import java.util.Comparator;
import java.util.HashSet;
import java.util.List;
import java.util.Set;
import org.isopter.model.note.grammar.Common;
import org.isopter.model.note.token.Cursor;
import org.isopter.model.note.token.Lexer;
import org.isopter.model.note.token.Token;
import org.isopter.model.note.word.WordFiles;
import org.isopter.model.note.word.WordRole;
import org.isopter.model.phrase.PhraseLine;
import org.isopter.model.value.Site;

/**
 * The words that deny a list of signs and join its last member: no ptosis, proptosis or lid lag.
 */
public final class ListWords {

  /** The words that deny a list, the longest first: pas de before pas. */
  private static final List<List<String>> DENIALS =
      WordFiles.of(WordRole.LIST_NO).stream()
          .map(Lexer::words)
          .sorted(Comparator.<List<String>>comparingInt(List::size).reversed())
          .toList();

  private static final Set<String> ANDS = ands();

  private ListWords() {}

  /** Says whether a word denies what follows: no, without. */
  public static boolean isDenial(Token token) {
    return WordFiles.is(WordRole.LIST_NO, token.text());
  }

  /** Returns how many words the denial has that the tokens start with. */
  public static int denial(List<Token> tokens) {
    Cursor cursor = new Cursor(tokens, 0);
    return DENIALS.stream().anyMatch(cursor::take) ? cursor.place() : 0;
  }

  /** Says whether a word names one eye, in any language: it may hold for all of a list. */
  public static boolean isOneEye(Token token) {
    return StandardPhrases.BOOK.apply(List.of(token)).stream()
        .flatMap(word -> Common.side(word).stream())
        .anyMatch(Site.EACH_EYE::contains);
  }

  /** Says whether a word is the second of a denial: the "de" of "pas de". */
  public static boolean isSecond(Token token) {
    return DENIALS.stream().anyMatch(words -> words.size() > 1 && token.is(words.get(1)));
  }

  /** Says whether an "or" may join the list of a denial: noch only that of weder. */
  public static boolean joins(Token or, Token denial) {
    return WordFiles.lines(WordRole.OR).stream()
        .filter(line -> line.phrases().contains(or.text()))
        .map(PhraseLine::meaning)
        .anyMatch(
            meaning -> meaning.equals(denial.text()) || !WordFiles.is(WordRole.LIST_NO, meaning));
  }

  /** Says whether a word joins what stands on either side of it, in any language. */
  public static boolean isAnd(Token token) {
    return ANDS.contains(token.text());
  }

  /** Says whether a word joins what may be one or the other. */
  public static boolean isOr(Token token) {
    return WordFiles.is(WordRole.OR, token.text());
  }

  private static Set<String> ands() {
    Set<String> ands = new HashSet<>(WordFiles.of(WordRole.AND));
    WordFiles.lines(WordRole.SAY).stream()
        .filter(line -> WordFiles.is(WordRole.AND, line.meaning()))
        .flatMap(line -> line.phrases().stream())
        .map(PhraseRow::bare)
        .forEach(ands::add);
    return Set.copyOf(ands);
  }
}
