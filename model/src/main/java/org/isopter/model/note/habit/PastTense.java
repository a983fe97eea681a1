package org.isopter.model.note.habit;

import java.util.List;
import java.util.Set;
import java.util.regex.Pattern;
import org.isopter.model.note.token.Clause;
import org.isopter.model.note.token.Lexer;
import org.isopter.model.note.token.Token;

/**
 * What a letter says in the past tense of the examination that it is about: {@code On examination
 * the acuity was 6/6 on the right}.
 *
 * <p>It starts with words for the examination and goes on, sentence by sentence, to the end of the
 * paragraph, or to a sentence of another time or person. A sentence that is in the present tense as
 * well sets the two apart, and is left alone.
 */
public final class PastTense {

  private static final Pattern EXAMINATION =
      Pattern.compile(
          "(?i)(?:on )?(?:exam|examination|o/e|clinically|on assessment)(?: today)?[: ]*");

  private static final Set<String> JOINS = Set.of("and", "but", "with");

  private boolean open;

  /** Returns the clause without its was and were where it tells of the examination. */
  public Clause told(Clause clause, String text) {
    boolean starts = EXAMINATION.matcher(clause.tokens().get(0).seen()).matches();
    open = starts || (open && !clause.afterGap());
    List<Token> rest =
        clause.tokens().stream()
            .filter(token -> !StandardPhrases.PAST.contains(token.text()))
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
    while (first < tokens.size() && !StandardPhrases.PAST.contains(tokens.get(first).text())) {
      first++;
    }
    return first == tokens.size()
        || tokens.subList(1, Math.max(1, first)).stream()
            .filter(token -> !token.equals(tokens.get(1)) || !token.is(","))
            .noneMatch(token -> token.kind() != Token.Kind.WORD || JOINS.contains(token.text()));
  }

  private static boolean isApart(Token token) {
    return StandardPhrases.APART.contains(token.text());
  }
}
