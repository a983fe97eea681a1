package org.isopter.model.note.arrange;

import java.util.ArrayList;
import java.util.List;
import org.isopter.model.note.grammar.Denial;
import org.isopter.model.note.token.Clause;
import org.isopter.model.note.token.Token;

/**
 * Leaves out the words at the end of a clause that say no more than its "no": {@code no ptosis
 * seen}, {@code no ptosis in either eye}. With a comma or another joint in the clause they may be
 * said of something else, and stay.
 */
public final class NothingSeen {

  /** A longer clause may speak of two things. */
  private static final int LONGEST = 7;

  private static final List<List<String>> ENDS =
      List.of(
          List.of("present"),
          List.of("in", "either", "eye"),
          List.of("either", "eye"),
          List.of("on", "either", "side"),
          List.of("either", "side"));

  private NothingSeen() {}

  /** Returns the note without such words. */
  public static List<Token> plain(List<Token> note) {
    return Clause.mapped(note, NothingSeen::clause);
  }

  private static List<Token> clause(List<Token> clause) {
    int end = clause.size() - length(clause);
    boolean denied =
        end > 1
            && end < clause.size()
            && clause.size() <= LONGEST
            && Denial.isNo(clause.get(0))
            && clause.subList(1, end).stream().allMatch(NothingSeen::isName);
    if (!denied) {
      return clause;
    }
    List<Token> plain = new ArrayList<>(clause.subList(0, end));
    plain.set(end - 1, plain.get(end - 1).until(clause.get(clause.size() - 1)));
    return plain;
  }

  /** Returns how many words at the end say no more; the first list that fits is the longest. */
  private static int length(List<Token> clause) {
    List<String> words = clause.stream().map(Token::text).toList();
    return ENDS.stream()
        .filter(end -> end.size() < words.size())
        .filter(end -> words.subList(words.size() - end.size(), words.size()).equals(end))
        .mapToInt(List::size)
        .findFirst()
        .orElse(0);
  }

  private static boolean isName(Token token) {
    return token.kind() == Token.Kind.WORD && !Denial.isNo(token) && !token.is("and");
  }
}
