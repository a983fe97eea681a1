package org.isopter.model.note;

import java.util.List;
import org.isopter.model.note.grammar.Headings;
import org.isopter.model.note.habit.OtherTimes;
import org.isopter.model.note.token.Clause;
import org.isopter.model.note.token.Lexer;
import org.isopter.model.note.token.Token;

/**
 * How far words about another time, another person or a plan reach beyond their own clause.
 *
 * <p>A label with a colon ({@code last visit:}) holds for its line; alone on its line, and as the
 * heading of a plan, for the lines below it up to an empty line or what was found today. Words
 * before the first heading of a sentence hold for the sentence.
 */
final class OtherScope {

  private enum Reach {
    NONE,
    SENTENCE,
    LINE,
    BLOCK
  }

  private final Headings headings;
  private Reach reach = Reach.NONE;
  private final String text;
  private boolean labelAlone;

  /** Whether the clause before is of another person, and where it ends. */
  private boolean afterOther;

  private int end;

  OtherScope(Headings headings, String text) {
    this.headings = headings;
    this.text = text;
  }

  /** Takes note of a clause that was dealt with. */
  void passed(Clause clause, boolean other) {
    boolean person = clause.tokens().stream().anyMatch(OtherTimes::isPerson);
    afterOther = other && (person || afterOther);
    end = clause.tokens().get(clause.tokens().size() - 1).end();
  }

  /** Says whether the sentence speaks of the person of the sentence before: she sees. */
  private boolean isOfSame(Clause next) {
    return afterOther
        && !next.afterGap()
        && Lexer.read(text.substring(end, next.tokens().get(0).end())).stream()
            .filter(token -> token.kind() == Token.Kind.WORD)
            .findFirst()
            .filter(OtherTimes::isPronoun)
            .isPresent();
  }

  /** Takes note of the next clause and says whether an earlier one holds for it. */
  boolean covers(Clause next) {
    boolean over =
        (reach == Reach.SENTENCE && next.newSentence())
            || (reach == Reach.LINE && next.newLine())
            || (reach == Reach.BLOCK && next.afterGap() && !labelAlone)
            || OtherTimes.startNow(next.tokens());
    if (over) {
      reach = Reach.NONE;
    }
    labelAlone = false;
    return reach != Reach.NONE || isOfSame(next);
  }

  /** Takes note of a clause that is of another time, another person or a plan. */
  void opened(Clause clause, boolean first) {
    List<Token> tokens = clause.tokens();
    boolean alone = clause.newLine() && OtherTimes.isOnlyLabel(tokens);
    boolean bare = clause.newLine() && saysNothing(tokens);
    boolean unknown = OtherTimes.isUnknownLabel(tokens) && !OtherTimes.label(tokens);
    boolean plan = OtherTimes.isPlan(tokens) && (OtherTimes.label(tokens) || bare);
    if (plan || ((alone || bare) && !(unknown && first))) {
      reach = Reach.BLOCK;
      labelAlone = true;
    } else if (OtherTimes.label(tokens)) {
      reach = Reach.LINE;
    } else if (!unknown && leads(tokens)) {
      reach = Reach.SENTENCE;
    }
  }

  /** Says whether no item starts in the clause: last visit. */
  private boolean saysNothing(List<Token> tokens) {
    return tokens.stream().anyMatch(OtherTimes::isOther)
        && tokens.stream().noneMatch(token -> token.kind() == Token.Kind.NUMBER)
        && firstHeading(tokens) == tokens.size();
  }

  private boolean leads(List<Token> tokens) {
    int heading = firstHeading(tokens);
    return tokens.subList(0, heading).stream().anyMatch(OtherTimes::isOther);
  }

  private int firstHeading(List<Token> tokens) {
    for (int i = 0; i < tokens.size(); i++) {
      if (headings.certain(tokens, i).isPresent()) {
        return i;
      }
    }
    return tokens.size();
  }
}
