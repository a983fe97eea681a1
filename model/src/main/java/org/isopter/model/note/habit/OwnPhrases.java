package org.isopter.model.note.habit;

import java.util.ArrayList;
import java.util.EnumSet;
import java.util.List;
import java.util.Set;
import org.isopter.model.note.grammar.Common;
import org.isopter.model.note.token.Lexer;
import org.isopter.model.note.token.Token;
import org.isopter.model.note.word.WordFiles;
import org.isopter.model.note.word.WordRole;
import org.isopter.model.phrase.PhraseLine;
import org.isopter.model.value.Fault;
import org.isopter.model.value.Site;

/**
 * Whether the phrases of a department may stand for what it says. None may name another eye than it
 * always does, or turn a denial into what is there: one slip in the file would change eyes in every
 * note.
 */
final class OwnPhrases {

  private OwnPhrases() {}

  /** Returns what keeps the line from being used. */
  static List<Fault> faults(PhraseLine line) {
    List<Token> meaning = Lexer.read(line.meaning());
    List<Fault> faults = new ArrayList<>();
    meaning.stream()
        .filter(UnknownSide::isUnknown)
        .findFirst()
        .ifPresent(
            word -> faults.add(fault(line, word.seen(), "words that shorthand understands")));
    for (String phrase : line.phrases()) {
      List<Token> usual = StandardPhrases.BOOK.apply(Lexer.read(PhraseRow.bare(phrase)));
      if (!sameEyes(sides(usual), sides(meaning))) {
        faults.add(fault(line, phrase, "a phrase that names no other eye than its meaning"));
      } else if (usual.size() == 1 && denies(usual) != denies(meaning) && isFixed(usual.get(0))) {
        faults.add(fault(line, phrase, "a phrase that denies where its meaning does"));
      }
    }
    return faults;
  }

  private static Fault fault(PhraseLine line, String seen, String wanted) {
    return Fault.of(line.place(), "\"" + seen + "\" for \"" + line.meaning() + "\"", wanted);
  }

  private static Set<Site> sides(List<Token> tokens) {
    Set<Site> sides = EnumSet.noneOf(Site.class);
    tokens.forEach(token -> Common.side(token).ifPresent(sides::add));
    return sides;
  }

  /** R and L may stand for both. */
  private static boolean sameEyes(Set<Site> phrase, Set<Site> meaning) {
    return meaning.containsAll(phrase)
        || (meaning.contains(Site.BOTH) && phrase.containsAll(Site.EACH_EYE));
  }

  private static boolean denies(List<Token> tokens) {
    return tokens.stream().anyMatch(OwnPhrases::isDenial);
  }

  private static boolean isDenial(Token token) {
    return token.is("absent")
        || WordFiles.is(WordRole.NO, token.text())
        || WordFiles.is(WordRole.LIST_NO, token.text());
  }

  /** Says whether a word by itself says that a sign is there, or not. */
  private static boolean isFixed(Token token) {
    return isDenial(token) || WordFiles.is(WordRole.STATES, token.text());
  }
}
