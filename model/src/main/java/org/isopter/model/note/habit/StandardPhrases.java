package org.isopter.model.note.habit;

import java.util.EnumSet;
import java.util.HashSet;
import java.util.Set;
import java.util.stream.Stream;
import org.isopter.model.note.grammar.Common;
import org.isopter.model.note.grammar.Grammar;
import org.isopter.model.note.item.Grammars;
import org.isopter.model.note.token.Lexer;
import org.isopter.model.note.token.Token;
import org.isopter.model.note.word.WordFiles;
import org.isopter.model.note.word.WordRole;

/** The phrases that come with the library: a file for each language. */
final class StandardPhrases {

  /**
   * The roles whose words are known, so that they are no slip of spelling and may be a sentence.
   */
  private static final Set<WordRole> KNOWN =
      EnumSet.of(
          WordRole.NO,
          WordRole.STATES,
          WordRole.OTHER,
          WordRole.PERSON,
          WordRole.PLAN,
          WordRole.SECTION,
          WordRole.LABEL,
          WordRole.NOW,
          WordRole.RETRACT,
          WordRole.CARE,
          WordRole.PASS);

  static final Phrasebook BOOK = Phrasebook.of(WordFiles.lines(WordRole.SAY), grammarWords());

  private StandardPhrases() {}

  /** Returns the words that the grammar reads. */
  static Set<String> grammarWords() {
    Set<String> words = new HashSet<>();
    Stream.concat(
            Grammars.ALL.stream().flatMap(Grammar::words),
            Stream.concat(Common.SIDES.words().stream(), Common.ABSENCES.words().stream()))
        .forEach(phrase -> words.addAll(Lexer.words(phrase)));
    KNOWN.forEach(role -> words.addAll(WordFiles.of(role)));
    return words;
  }

  /** Says whether a word only belongs to the sentence; a lone capital may stand for something. */
  static boolean saysNothing(Token token) {
    return WordFiles.is(WordRole.PASS, token.text())
        && (token.text().length() > 1 || token.seen().equals(token.text()));
  }

  /** Says whether a word is meant as it stands: fellow is no slip of follow. */
  static boolean isWhole(Token token) {
    return WordFiles.is(WordRole.WHOLE, token.text());
  }
}
