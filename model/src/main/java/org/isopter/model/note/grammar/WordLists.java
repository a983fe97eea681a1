package org.isopter.model.note.grammar;

import java.util.Optional;
import java.util.function.UnaryOperator;
import java.util.stream.Stream;
import org.isopter.model.finding.Finding;
import org.isopter.model.finding.Part;
import org.isopter.model.finding.Spec;
import org.isopter.model.finding.Variant;
import org.isopter.model.note.token.Cursor;
import org.isopter.model.note.token.Lexer;
import org.isopter.model.note.token.PhraseTable;
import org.isopter.model.value.Concept;
import org.isopter.model.value.Term;

/** The words of a list of answers that has no Java type, as a finding states them. */
public final class WordLists {

  private WordLists() {}

  /** Returns the words of a finding whose value is one of a list. */
  public static PhraseTable<Term> vocabulary(Finding<?> finding) {
    return vocabulary(finding, Part.VALUE, word -> word);
  }

  /** Returns the words of a value or a part, each as it is said. */
  public static PhraseTable<Term> vocabulary(
      Finding<?> finding, String key, UnaryOperator<String> said) {
    PhraseTable<Term> words = PhraseTable.empty();
    for (Concept concept : concepts(finding, key)) {
      words.say((Term) concept, said.apply(concept.word()));
    }
    return words;
  }

  /** Returns the words with others that are said for one of them as well. */
  public static PhraseTable<Term> also(PhraseTable<Term> words, String answer, String... more) {
    return words.say(answer(words, answer), more);
  }

  /** Returns the answer of a list that a word names. */
  public static Term answer(PhraseTable<Term> words, String answer) {
    return words.read(new Cursor(Lexer.read(answer), 0)).orElseThrow();
  }

  private static Iterable<Concept> concepts(Finding<?> finding, String key) {
    Variant variant = finding.layout().variants().get(0);
    Stream<Spec> part =
        variant.parts().stream().filter(one -> one.key().equals(key)).map(Part::spec);
    Optional<Spec> spec = key.equals(Part.VALUE) ? variant.value() : part.findFirst();
    return ((Spec.Coded) spec.orElseThrow()).answers().concepts();
  }
}
