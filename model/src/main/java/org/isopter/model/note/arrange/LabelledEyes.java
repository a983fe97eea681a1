package org.isopter.model.note.arrange;

import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import org.isopter.model.note.grammar.Common;
import org.isopter.model.note.token.Clause;
import org.isopter.model.note.token.Cursor;
import org.isopter.model.note.token.Token;
import org.isopter.model.note.word.WordFiles;
import org.isopter.model.note.word.WordRole;
import org.isopter.model.value.Site;

/**
 * Repeats the eye of a part of a note before its sentences: {@code RE: VA 6/9. IOP 12. LE: VA 6/6.
 * IOP 13.} says the pressure of each. A sentence without an eye is of the part in which it stands
 * only where the part of the fellow eye has one that starts alike; any other may be of both eyes,
 * and is asked about. Nothing is repeated from a sentence on that names an eye, or starts like one
 * before it in the same part.
 */
public final class LabelledEyes {

  /**
   * The part of one eye.
   *
   * @param label the eye and its colon
   * @param first the words that its sentences start with
   * @param sentences where its sentences without an eye start
   */
  private record Part(Site eye, List<Token> label, Set<String> first, Set<Token> sentences) {

    /** Takes a sentence; not one that starts like one before it: measured again, or elsewhere. */
    boolean takes(List<Token> sentence, boolean needsEye) {
      boolean other = LabelledEyes.first(sentence).map(first::add).orElse(true);
      if (other && needsEye) {
        sentences.add(sentence.get(0));
      }
      return other;
    }
  }

  private LabelledEyes() {}

  /** Returns the note with the eyes repeated. */
  public static List<Token> repeated(List<Token> note) {
    List<Part> parts = parts(Clause.of(note));
    List<Token> out = new ArrayList<>();
    for (Token token : note) {
      parts.stream()
          .filter(part -> part.sentences().contains(token) && fellowHas(parts, part, token))
          .forEach(part -> part.label().forEach(one -> out.add(one.before(token))));
      out.add(token);
    }
    return List.copyOf(out);
  }

  private static boolean fellowHas(List<Part> parts, Part part, Token first) {
    int at = parts.indexOf(part);
    return isFellow(parts, at, at + 1, first.text()) || isFellow(parts, at, at - 1, first.text());
  }

  private static boolean isFellow(List<Part> parts, int at, int other, String first) {
    return other >= 0
        && other < parts.size()
        && parts.get(other).eye() != parts.get(at).eye()
        && parts.get(other).first().contains(first);
  }

  /** Returns the parts of each eye, in their order. */
  private static List<Part> parts(List<Clause> clauses) {
    List<Part> parts = new ArrayList<>();
    boolean open = false;
    for (Clause clause : clauses) {
      Optional<Part> starts = labelled(clause.tokens());
      if (starts.isPresent()) {
        parts.add(starts.get());
        open = true;
      } else if (open) {
        Part part = parts.get(parts.size() - 1);
        open =
            !clause.afterGap()
                && !Common.namesSide(clause.tokens())
                && part.takes(clause.tokens(), isOfNoLine(clause, clauses));
      }
    }
    return parts;
  }

  /** Says whether no eye holds for the whole of its line: two do, or it is alone without one. */
  private static boolean isOfNoLine(Clause clause, List<Clause> clauses) {
    List<Clause> line = clauses.stream().filter(any -> any.line() == clause.line()).toList();
    long labels = line.stream().filter(any -> labelled(any.tokens()).isPresent()).count();
    return line.size() == 1 || labels > 1;
  }

  /** Returns the part that starts with an eye and a colon, and says something behind them. */
  private static Optional<Part> labelled(List<Token> clause) {
    Cursor cursor = new Cursor(clause, 0);
    Optional<Site> eye = cursor.attempt(Common.SIDES).filter(Site.EACH_EYE::contains);
    if (eye.isEmpty() || !cursor.take(":") || cursor.atEnd()) {
      return Optional.empty();
    }
    List<Token> rest = clause.subList(cursor.place(), clause.size());
    Set<String> first = new HashSet<>();
    first(rest).ifPresent(first::add);
    return Common.namesSide(rest)
        ? Optional.empty()
        : Optional.of(
            new Part(eye.get(), clause.subList(0, cursor.place()), first, new HashSet<>()));
  }

  /** Returns the word that a sentence starts with; a no is of many things. */
  private static Optional<String> first(List<Token> sentence) {
    Token first = sentence.get(0);
    boolean word = first.kind() == Token.Kind.WORD && !WordFiles.is(WordRole.NO, first.text());
    return word ? Optional.of(first.text()) : Optional.empty();
  }
}
