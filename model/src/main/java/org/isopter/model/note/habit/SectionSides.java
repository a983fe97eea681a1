package org.isopter.model.note.habit;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;
import org.isopter.model.note.grammar.Common;
import org.isopter.model.note.token.Cursor;
import org.isopter.model.note.token.Lexer;
import org.isopter.model.note.token.Token;
import org.isopter.model.note.word.WordFiles;
import org.isopter.model.note.word.WordRole;

/**
 * Puts a colon between the heading of a part of the examination and the eye that it names: {@code
 * Fundus OD:} and {@code OD fundus:} are {@code Fundus: OD:}. Behind an eye with a colon of its
 * own, which is of all that follows, the heading says nothing and is left out.
 */
public final class SectionSides {

  /** The headings, as words in lower case without their colon. */
  private static final Set<List<String>> SECTIONS =
      WordFiles.of(WordRole.PART).stream()
          .map(Lexer::words)
          .collect(Collectors.toUnmodifiableSet());

  private static final int LONGEST = SECTIONS.stream().mapToInt(List::size).max().orElseThrow();

  private final List<Token> note;

  /** A label, and where it ends in the note. */
  private record Label(List<Token> tokens, int end) {}

  private SectionSides(List<Token> note) {
    this.note = note;
  }

  /** Returns the note with such labels apart. */
  public static List<Token> apart(List<Token> note) {
    SectionSides sections = new SectionSides(note);
    List<Token> out = new ArrayList<>();
    int at = 0;
    while (at < note.size()) {
      Optional<Label> label = sections.starts(at) ? sections.label(at) : Optional.empty();
      out.addAll(label.map(Label::tokens).orElse(note.subList(at, at + 1)));
      at = label.map(Label::end).orElse(at + 1);
    }
    return List.copyOf(out);
  }

  private boolean starts(int at) {
    return at == 0 || note.get(at - 1).kind() == Token.Kind.BREAK;
  }

  /** Returns a heading and an eye with a colon behind each; empty where they do not stand here. */
  private Optional<Label> label(int at) {
    int section = section(at);
    int first = section > 0 ? section : side(at);
    int second = at + first + (isColon(at + first) ? 1 : 0);
    int length = section > 0 ? side(second) : section(second);
    int end = second + length;
    if (first == 0 || length == 0 || !isColon(end)) {
      return Optional.empty();
    }
    List<Token> one = note.subList(at, at + first);
    List<Token> two = note.subList(second, end);
    if (section == 0 && second > at + first) {
      return Optional.of(new Label(note.subList(at, second), end + 1));
    }
    List<Token> label = new ArrayList<>(section > 0 ? one : two);
    label.add(note.get(end));
    label.addAll(section > 0 ? two : one);
    label.add(closeBehind(label.get(label.size() - 1), note.get(end)));
    return Optional.of(new Label(label, end + 1));
  }

  /** Returns the colon as one right behind the eye. */
  private static Token closeBehind(Token eye, Token colon) {
    int end = Math.max(eye.end() + 1, colon.end());
    return new Token(colon.kind(), ":", colon.seen(), eye.end(), end, eye.line(), eye.column() + 1);
  }

  private boolean isColon(int at) {
    return at < note.size() && note.get(at).is(":");
  }

  /** Returns how many words name an eye here. */
  private int side(int at) {
    Cursor cursor = new Cursor(note, at);
    return cursor.attempt(Common.SIDES).isPresent() ? cursor.place() - at : 0;
  }

  /** Returns how many words are a heading here. */
  private int section(int at) {
    for (int length = Math.min(LONGEST, note.size() - at); length > 0; length--) {
      if (SECTIONS.contains(note.subList(at, at + length).stream().map(Token::text).toList())) {
        return length;
      }
    }
    return 0;
  }
}
