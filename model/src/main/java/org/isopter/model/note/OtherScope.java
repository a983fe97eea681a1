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
 * before the first heading of a sentence hold for the sentence, and so does a sentence of history
 * that names no other visit ({@code hx of glaucoma.}). The heading of a part of the examination
 * ({@code fundus:}) ends what is history, but not what is of another visit, which has such parts
 * too.
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

  /** Whether the words that hold start a plan. */
  private boolean planLabel;

  /** Whether the words that hold are a plan of which something is said. */
  private boolean plan;

  /** Whether the words that hold are of the history of the patient, and of no other visit. */
  private boolean history;

  /** Whether the words that hold are of another person, which words for the patient end. */
  private boolean person;

  /** Whether nothing but a word for it stands before the full stop: hx. floaters. */
  private boolean abbreviated;

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
    if (history && reach == Reach.SENTENCE && OtherTimes.namesVisit(clause.tokens())) {
      reach = Reach.LINE;
    }
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
            || (plan && endsPlan(next))
            || OtherTimes.startNow(next.tokens())
            || (person && OtherTimes.isPatient(next.tokens()))
            || (history && OtherTimes.startPart(next.tokens()));
    if (history && labelAlone && !next.newLine()) {
      // It is no heading of the lines below, but a sentence before others.
      reach = Reach.SENTENCE;
      over = next.newSentence() && !abbreviated;
    }
    if (over) {
      reach = Reach.NONE;
    }
    // A heading below the label alone may be the first thing to be done.
    plan = reach == Reach.BLOCK && (plan || planLabel);
    labelAlone = false;
    return reach != Reach.NONE || isOfSame(next);
  }

  /** Says whether a finding starts a line below a plan, which is no line of a list. */
  private boolean endsPlan(Clause next) {
    return next.newLine()
        && startsLine(next.tokens().get(0))
        && headings.certain(next.tokens(), 0).isPresent()
        && next.tokens().stream().anyMatch(Token::isNumber);
  }

  private boolean startsLine(Token first) {
    String before = text.substring(0, first.start());
    return before.substring(before.lastIndexOf('\n') + 1).isBlank();
  }

  /** Takes note of a clause that is of another time, another person or a plan. */
  void opened(Clause clause, boolean first) {
    List<Token> tokens = clause.tokens();
    boolean ofVisit =
        history && reach == Reach.SENTENCE && !clause.newLine() && OtherTimes.namesVisit(tokens);
    history = OtherTimes.isHistory(tokens);
    abbreviated = tokens.size() == 1;
    person =
        tokens.stream().anyMatch(OtherTimes::isPerson)
            && tokens.stream()
                .allMatch(word -> OtherTimes.isPerson(word) || !OtherTimes.isOther(word));
    boolean alone = clause.newLine() && OtherTimes.isOnlyLabel(tokens);
    boolean bare = clause.newLine() && saysNothing(tokens) && !OtherTimes.lasts(tokens);
    boolean unknown = OtherTimes.isUnknownLabel(tokens) && !OtherTimes.label(tokens);
    boolean ofPlan = OtherTimes.isPlan(tokens) && (OtherTimes.label(tokens) || bare);
    boolean title = first && bare && !OtherTimes.label(tokens) && OtherTimes.isOnlyOfPlan(tokens);
    planLabel = ofPlan;
    plan = ofPlan && OtherTimes.label(tokens) && !alone;
    if (title) {
      reach = Reach.NONE;
    } else if (ofPlan || ((alone || bare) && !(unknown && first))) {
      reach = Reach.BLOCK;
      labelAlone = true;
    } else if (ofVisit || OtherTimes.label(tokens)) {
      reach = Reach.LINE;
    } else if (!unknown && leads(tokens)) {
      reach = Reach.SENTENCE;
    }
  }

  /** Says whether no item starts in the clause: last visit. */
  private boolean saysNothing(List<Token> tokens) {
    return tokens.stream().anyMatch(OtherTimes::isOther)
        && OtherTimes.hasNoNumberButDate(tokens)
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
