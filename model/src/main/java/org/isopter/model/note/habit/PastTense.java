package org.isopter.model.note.habit;

import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import java.util.stream.Collectors;
import org.isopter.model.note.grammar.Common;
import org.isopter.model.note.token.Clause;
import org.isopter.model.note.token.Lexer;
import org.isopter.model.note.token.Token;
import org.isopter.model.note.word.WordFiles;
import org.isopter.model.note.word.WordRole;

/**
 * What a letter says in the past tense of the examination that it is about: {@code On examination
 * the acuity was 6/6 on the right}.
 *
 * <p>It starts with words for the examination and goes on, sentence by sentence, to the end of the
 * paragraph, or to a sentence of another time or person. A sentence that is in the present tense as
 * well sets the two apart, and is left alone.
 */
public final class PastTense {

  /** The words that start it, as they are cut into pieces. */
  private static final Set<List<String>> EXAMINATION =
      WordFiles.of(WordRole.EXAM).stream()
          .map(Lexer::words)
          .collect(Collectors.toUnmodifiableSet());

  /** What a letter says of a visit, beside a word for today. */
  private static final Set<String> SEEN = Set.of("reviewed", "saw", "seen", "examined", "assessed");

  private boolean open;

  /** Returns the clause without its was and were where it tells of the examination. */
  public Clause told(Clause clause, String text) {
    boolean starts = isExamination(clause.tokens().get(0)) || isVisitOfToday(clause.tokens());
    open = starts || (open && !clause.afterGap());
    List<Token> rest =
        clause.tokens().stream()
            .filter(token -> !WordFiles.is(WordRole.PAST, token.text()))
            .toList();
    open =
        open
            && !rest.isEmpty()
            && !OtherTimes.areIn(rest)
            && Lexer.read(text).stream().noneMatch(PastTense::isApart)
            && leads(clause.tokens());
    return open
        ? new Clause(rest, clause.newLine(), clause.afterGap(), clause.newSentence())
        : clause;
  }

  /** Says whether nothing is told before the first of them: R 6/9, L was 6/60 tells two times. */
  private static boolean leads(List<Token> tokens) {
    int first = 0;
    while (first < tokens.size() && !WordFiles.is(WordRole.PAST, tokens.get(first).text())) {
      first++;
    }
    return first == tokens.size()
        || tokens.subList(1, Math.max(1, first)).stream()
            .filter(token -> !token.equals(tokens.get(1)) || !token.is(","))
            .noneMatch(token -> token.kind() != Token.Kind.WORD || Common.isConnector(token));
  }

  /** Says whether a sentence tells of the visit that the letter is about: I saw him today. */
  private static boolean isVisitOfToday(List<Token> tokens) {
    return tokens.stream().anyMatch(token -> token.is("today"))
        && tokens.stream().anyMatch(token -> SEEN.contains(token.text()));
  }

  private static boolean isExamination(Token first) {
    List<String> words = new ArrayList<>(Lexer.words(first.seen()));
    words.removeIf(":"::equals);
    return EXAMINATION.contains(words);
  }

  private static boolean isApart(Token token) {
    return WordFiles.is(WordRole.APART, token.text());
  }
}
