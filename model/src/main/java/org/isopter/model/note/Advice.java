package org.isopter.model.note;

import java.util.List;
import java.util.Optional;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.isopter.model.note.grammar.Grammar;
import org.isopter.model.note.grammar.Headings;
import org.isopter.model.note.item.Grammars;
import org.isopter.model.note.token.Lexer;
import org.isopter.model.note.token.NotRead;
import org.isopter.model.note.token.Token;
import org.isopter.model.text.NearestWord;

/** The words that help whoever wrote an item that was not read. */
final class Advice {

  private static final String START =
      "start with what was examined: VA, PH, NV, pupils, RAPD, IOP, VF, ishihara, disc, CDR v, EOM, "
          + "ptosis, refraction";

  private static final int SHORTEST = 3;

  private Advice() {}

  static String why(NotRead notRead, Token at, Headings headings) {
    if (!notRead.isWord()) {
      return notRead.why();
    }
    if (isCommaNumber(at)) {
      return "\""
          + at.seen()
          + "\" may be one number or two: write a point, or a space behind the comma";
    }
    boolean starts = headings.at(List.of(at), 0).filter(found -> found.at() == 0).isPresent();
    return starts ? notRead.why() + ": put \";\" before a new item" : notRead.why();
  }

  static String nearest(NotRead notRead, Token at, Optional<Grammar> grammar) {
    return notRead
        .nearest()
        .or(() -> Optional.of(at).filter(any -> notRead.isWord()).flatMap(t -> meant(t, grammar)))
        .or(() -> grammar.map(Grammar::example))
        .orElse(START);
  }

  private static Optional<String> meant(Token at, Optional<Grammar> grammar) {
    if (isCommaNumber(at)) {
      return Optional.of(at.text().replace(',', '.'));
    }
    String nearest = String.join(" or ", NearestWord.of(at.text(), known(grammar)));
    return Optional.of(nearest)
        .filter(word -> !word.isEmpty() && !word.equalsIgnoreCase(at.text()))
        .or(() -> grammar.flatMap(g -> phrases(at.text(), g.words())));
  }

  /** Returns the phrases of several words that the seen word is one of. */
  private static Optional<String> phrases(String seen, Stream<String> words) {
    String phrases =
        words
            .filter(word -> word.contains(" ") && word.contains(seen))
            .filter(word -> Lexer.words(word).contains(seen))
            .distinct()
            .collect(Collectors.joining(" or "));
    return Optional.of(phrases).filter(some -> seen.length() > SHORTEST && !some.isEmpty());
  }

  private static boolean isCommaNumber(Token at) {
    return at.text().matches("\\d+,\\d+");
  }

  private static Stream<String> known(Optional<Grammar> grammar) {
    return grammar
        .map(Grammar::words)
        .orElseGet(() -> Grammars.ALL.stream().flatMap(Grammar::words));
  }
}
