package org.isopter.model.note.habit;

import java.util.Comparator;
import java.util.List;
import java.util.Set;
import org.isopter.model.note.grammar.Common;
import org.isopter.model.note.token.Lexer;
import org.isopter.model.note.token.Token;
import org.isopter.model.note.word.WordFiles;
import org.isopter.model.note.word.WordRole;
import org.isopter.model.phrase.PhraseLine;
import org.isopter.model.value.LowerCase;

/**
 * A phrase of the book.
 *
 * @param phrase its words
 * @param exact whether it holds only in the case in which it is written
 * @param opening where it may stand
 * @param ending whether it may only end a clause
 * @param meaning the words of the grammar that it stands for
 * @param said the same as written in the file
 * @param language its language
 */
record PhraseRow(
    List<String> phrase,
    boolean exact,
    Opening opening,
    boolean ending,
    List<Token> meaning,
    String said,
    String language) {

  private static final Set<String> SIGNS = Set.of("+", "-");

  /** Where a phrase may stand. */
  enum Opening {
    ANYWHERE(0),
    /** Where an item starts: at the start of a clause, or behind a comma. */
    ITEM(1),
    /** At the start of a clause. */
    CLAUSE(2);

    /** How many marks say so before the phrase. */
    private final int marks;

    Opening(int marks) {
      this.marks = marks;
    }
  }

  static final Comparator<PhraseRow> LONGEST_FIRST =
      Comparator.comparingInt((PhraseRow row) -> row.phrase().size())
          .thenComparing(PhraseRow::opening)
          .thenComparing(PhraseRow::exact)
          .reversed();

  /**
   * Returns a phrase as the file writes it: {@code ^} and {@code ^^} for where it starts, {@code $}
   * behind it for where it ends, {@code =} for case.
   *
   * @param meaning the words of the grammar that the line stands for
   */
  static PhraseRow of(String written, PhraseLine line, List<Token> meaning) {
    Opening opening =
        written.startsWith("^^")
            ? Opening.CLAUSE
            : written.startsWith("^") ? Opening.ITEM : Opening.ANYWHERE;
    String rest = written.substring(opening.marks);
    boolean exact = rest.startsWith("=") && rest.length() > 1;
    boolean ending = rest.endsWith("$");
    List<Token> words = Lexer.read(rest.substring(exact ? 1 : 0, rest.length() - (ending ? 1 : 0)));
    List<String> texts = words.stream().map(w -> exact ? w.seen() : w.text()).toList();
    return new PhraseRow(texts, exact, opening, ending, meaning, line.meaning(), line.language());
  }

  /** Returns a phrase as written in the file without its marks. */
  static String bare(String written) {
    int from = 0;
    while (from < written.length() - 1 && "^=".indexOf(written.charAt(from)) >= 0) {
      from++;
    }
    return written.substring(from, written.length() - (written.endsWith("$") ? 1 : 0));
  }

  /** Returns its first word, in small letters. */
  String first() {
    return LowerCase.of(phrase.get(0));
  }

  boolean isLike(PhraseRow other) {
    return phrase.size() == other.phrase.size() && opening == other.opening && exact == other.exact;
  }

  boolean fits(List<Token> tokens, int at, boolean behindHeading) {
    return isHere(tokens, at)
        && (behindHeading || mayStand(tokens, at))
        && endsWhereItMay(tokens, at + phrase.size())
        && !(isOfSeveral() && goesOn(tokens, at + phrase.size()))
        && !isSuffix(tokens, at)
        && !hasSignOfItsSide(tokens, at);
  }

  private boolean isHere(List<Token> tokens, int at) {
    if (at + phrase.size() > tokens.size()) {
      return false;
    }
    for (int i = 0; i < phrase.size(); i++) {
      Token token = tokens.get(at + i);
      if (!(exact ? token.seen() : token.text()).equals(phrase.get(i))) {
        return false;
      }
    }
    return true;
  }

  /** Says whether it stands for several items: what goes on behind them may be said of each. */
  private boolean isOfSeveral() {
    return meaning.size() > 2
        && meaning.subList(1, meaning.size() - 1).stream().anyMatch(token -> token.is(","))
        && meaning.stream().noneMatch(token -> token.kind() == Token.Kind.BREAK);
  }

  private static boolean goesOn(List<Token> tokens, int end) {
    return end < tokens.size()
        && tokens.get(end).kind() != Token.Kind.BREAK
        && !tokens.get(end).is(",")
        && !tokens.get(end).is(")")
        && !Common.isConnector(tokens.get(end))
        && !WordFiles.is(WordRole.NO, tokens.get(end).text());
  }

  private boolean endsWhereItMay(List<Token> tokens, int end) {
    return !ending || end == tokens.size() || tokens.get(end).kind() == Token.Kind.BREAK;
  }

  /** A sign close behind a number belongs to the number: 2+ RAPD. */
  private boolean isSuffix(List<Token> tokens, int at) {
    return at > 0
        && SIGNS.contains(phrase.get(0))
        && tokens.get(at - 1).isNumber()
        && tokens.get(at - 1).end() == tokens.get(at).start();
  }

  /** Behind a sign, the sign between two sides is that of the second: SVP -R +L. */
  private boolean hasSignOfItsSide(List<Token> tokens, int at) {
    return at > 0 && phrase.lastIndexOf("+") > 0 && SIGNS.contains(tokens.get(at - 1).text());
  }

  /** Says whether it stands in a form as the heading of a field: full Colour: 13/13. */
  private boolean isHeadingOfForm(List<Token> tokens, int at) {
    int end = at + phrase.size();
    return end < tokens.size()
        && tokens.get(end).is(":")
        && tokens.get(at).start() - tokens.get(at - 1).end() > 1
        && Character.isUpperCase(tokens.get(at).seen().charAt(0));
  }

  private boolean mayStand(List<Token> tokens, int at) {
    int start = at;
    while (start > 0 && StandardPhrases.saysNothing(tokens.get(start - 1))) {
      start--;
    }
    boolean clause = start == 0 || tokens.get(start - 1).kind() == Token.Kind.BREAK;
    return switch (opening) {
      case ANYWHERE -> true;
      case ITEM ->
          clause
              || tokens.get(start - 1).is(",")
              || isHeadingOfForm(tokens, at)
              || isBehindEyeThatStarts(tokens, start);
      case CLAUSE -> clause;
    };
  }

  /** Says whether an eye alone stands before a word in its item: R light reaction. */
  private boolean isBehindEyeThatStarts(List<Token> tokens, int at) {
    int end = tokens.get(at - 1).is(":") ? at - 1 : at;
    int side = end > 1 && tokens.get(end - 1).is("eye") ? end - 2 : end - 1;
    boolean starts = side == 0 || (side > 0 && tokens.get(side - 1).kind() == Token.Kind.BREAK);
    // A single letter beside an eye may be anything: R T 14.
    return starts
        && phrase.get(0).length() > 1
        && meaning.size() < 3
        && Common.side(tokens.get(side)).isPresent();
  }
}
