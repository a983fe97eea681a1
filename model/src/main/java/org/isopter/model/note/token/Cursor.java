package org.isopter.model.note.token;

import java.math.BigDecimal;
import java.util.List;
import java.util.Optional;
import java.util.function.Predicate;

/** A place in the tokens of an item, moved along as they are understood. */
public final class Cursor {

  private final List<Token> tokens;
  private int next;

  public Cursor(List<Token> tokens, int start) {
    this.tokens = tokens;
    this.next = start;
  }

  /** Says whether all tokens are behind. */
  public boolean atEnd() {
    return next >= tokens.size();
  }

  /** Returns how many tokens are behind, for {@link #back}. */
  public int place() {
    return next;
  }

  /** Goes back to a place. */
  public void back(int place) {
    next = place;
  }

  /** Returns the token here; there must be one. */
  public Token token() {
    return tokens.get(next);
  }

  /** Says whether this text stands here. */
  public boolean sees(String text) {
    return !atEnd() && token().is(text);
  }

  /** Moves past these texts if they all stand here. */
  public boolean take(List<String> texts) {
    if (next + texts.size() > tokens.size()) {
      return false;
    }
    for (int i = 0; i < texts.size(); i++) {
      if (!tokens.get(next + i).is(texts.get(i))) {
        return false;
      }
    }
    next += texts.size();
    return true;
  }

  /** Moves past this text if it stands here. */
  public boolean take(String text) {
    return take(List.of(text));
  }

  /** Moves past the first of these texts that stands here. */
  public boolean takeAny(String... texts) {
    for (String text : texts) {
      if (take(text)) {
        return true;
      }
    }
    return false;
  }

  /** Moves past a number without a sign. */
  public Optional<BigDecimal> number() {
    // A nought before digits is what a lost point leaves behind: 03 for 0.3.
    return digits().filter(text -> !hasLostPoint(text)).map(BigDecimal::new);
  }

  private static boolean hasLostPoint(String text) {
    return text.length() > 1 && text.charAt(0) == '0' && Character.isDigit(text.charAt(1));
  }

  /** Says whether this text stands before the next token. */
  public boolean isBehind(String text) {
    return next > 0 && tokens.get(next - 1).is(text);
  }

  /** Says whether a token of a kind stands before the next one. */
  public boolean isBehindOne(Predicate<Token> kind) {
    return next > 0 && kind.test(tokens.get(next - 1));
  }

  /** Says whether the next token stands close behind the one before it. */
  public boolean isClose() {
    return next > 0 && !atEnd() && tokens.get(next - 1).end() == token().start();
  }

  /** Says whether an at stands just before. */
  boolean sawAt() {
    return next > 0 && (tokens.get(next - 1).is("@") || tokens.get(next - 1).is("at"));
  }

  /** Moves past the digits of a number, noughts before it included: an axis, a time of day. */
  public Optional<String> digits() {
    if (atEnd() || !token().isNumber()) {
      return Optional.empty();
    }
    return Optional.of(tokens.get(next++).text());
  }

  /** Moves past a number that carries its sign, close before it. */
  public Optional<BigDecimal> signed() {
    int start = next;
    boolean minus = sees("-");
    if (!minus && !sees("+")) {
      return Optional.empty();
    }
    int signEnd = tokens.get(next++).end();
    Optional<BigDecimal> number =
        Optional.of(this)
            .filter(c -> !c.atEnd() && c.token().start() == signEnd)
            .flatMap(Cursor::number);
    if (number.isEmpty()) {
      next = start;
    }
    return number.map(n -> minus ? n.negate() : n);
  }

  /** Moves past a number with or without a sign. */
  public Optional<BigDecimal> anyNumber() {
    return signed().or(this::number);
  }

  /** Moves past a whole number of at most four digits. */
  public Optional<Integer> whole() {
    return attempt(
        c ->
            c.number()
                .filter(n -> n.scale() <= 0 && n.precision() <= 4)
                .map(BigDecimal::intValueExact));
  }

  /** Moves past what the matcher finds here, or stays. */
  public <T> Optional<T> attempt(Matcher<T> matcher) {
    int start = next;
    Optional<T> found = matcher.read(this);
    if (found.isEmpty()) {
      next = start;
    }
    return found;
  }
}
