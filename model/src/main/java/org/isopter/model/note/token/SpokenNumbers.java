package org.isopter.model.note.token;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import org.isopter.model.note.word.WordFiles;
import org.isopter.model.note.word.WordRole;

/**
 * Puts dictated numbers into digits: six over nine, twenty forty, zero point three, two out of
 * seventeen, minus one point five, huit dixièmes, null Komma acht, veinte cuarenta.
 *
 * <p>Two numbers without a word between are an acuity only where the first is a usual distance and
 * the second a line of a chart (common practice, no source).
 */
public final class SpokenNumbers {

  private static final Set<String> METRES =
      Set.of("4", "5", "6", "7.5", "9", "12", "18", "24", "36", "60");

  private static final Set<String> FEET =
      Set.of("15", "20", "25", "30", "40", "50", "60", "70", "80", "100", "200", "400");

  private final List<Token> tokens;
  private final NumberWords words;
  private final SpokenCount count;
  private final List<Token> out = new ArrayList<>();
  private int at;

  private SpokenNumbers(List<Token> tokens, NumberWords words) {
    this.tokens = tokens;
    this.words = words;
    this.count = new SpokenCount(tokens, words);
  }

  /**
   * Returns the tokens with digits in the place of number words.
   *
   * @param words the words of the languages of the note
   */
  public static List<Token> read(List<Token> tokens, NumberWords words) {
    SpokenNumbers spoken = new SpokenNumbers(tokens, words);
    while (spoken.at < tokens.size()) {
      spoken.step();
    }
    return List.copyOf(spoken.out);
  }

  private void step() {
    int start = at;
    Optional<String> number = number();
    if (number.isPresent()) {
      put(Token.Kind.NUMBER, number.get(), start, at);
      if (!share(number.get())) {
        line(number.get(), !tokens.get(start).seen().equals(number.get()));
      }
    } else if (!sign() && !between()) {
      out.add(tokens.get(at++));
    }
  }

  /** Moves past a number in words, or one in digits. */
  private Optional<String> number() {
    if (at < tokens.size() && tokens.get(at).isNumber()) {
      String whole = tokens.get(at++).text();
      return Optional.of(whole + (whole.contains(".") ? "" : decimals(false)));
    }
    Optional<Integer> whole = count.read(at);
    if (whole.isPresent()) {
      at = count.end();
      return whole.map(n -> n + decimals(n < 10));
    }
    boolean fraction = WordFiles.is(WordRole.POINT, text(at)) && digit(at + 1).isPresent();
    return fraction ? Optional.of("0" + decimals(true)) : Optional.empty();
  }

  /**
   * Moves past point and digits, in words or in one number.
   *
   * @param few whether two digits may be said as one number: cero coma veinticinco. Behind a larger
   *     number the comma may part two values.
   */
  private String decimals(boolean few) {
    if (!WordFiles.is(WordRole.POINT, text(at))) {
      return "";
    }
    if (at + 1 < tokens.size() && tokens.get(at + 1).text().matches("\\d+")) {
      at += 2;
      return "." + tokens.get(at - 1).text();
    }
    Optional<Integer> two = few ? count.readTens(at + 1) : Optional.empty();
    if (two.isPresent()) {
      at = count.end();
      return "." + two.get();
    }
    StringBuilder digits = new StringBuilder();
    int next = at + 1;
    while (digit(next).isPresent()) {
      digits.append(digit(next++).orElseThrow());
    }
    at = digits.isEmpty() ? at : next;
    return digits.isEmpty() ? "" : "." + digits;
  }

  private Optional<Integer> digit(int place) {
    return words.value(text(place), 0, 10);
  }

  /** Puts what a number is a share of behind it: huit dixièmes. */
  private boolean share(String number) {
    Optional<String> share = words.share(text(at)).filter(ten -> number.matches("\\d+"));
    share.ifPresent(
        ten -> {
          put(Token.Kind.MARK, "/", at, at);
          put(Token.Kind.NUMBER, ten, at, at + 1);
          at++;
        });
    return share.isPresent();
  }

  /** Puts the stroke between two numbers that are a line of a chart: six nine, twenty forty. */
  private void line(String first, boolean spoken) {
    int start = at;
    Set<String> lines = first.equals("6") ? METRES : first.equals("20") ? FEET : Set.of();
    if (!spoken || lines.isEmpty() || at >= tokens.size() || !isWord(at)) {
      return;
    }
    Optional<String> second = number().filter(lines::contains);
    if (second.isEmpty()) {
      at = start;
      return;
    }
    put(Token.Kind.MARK, "/", start, start);
    put(Token.Kind.NUMBER, second.get(), start, at);
  }

  /** Puts a stroke for over, slash and out of between two numbers. */
  private boolean between() {
    int length = count.stroke(at);
    boolean behind = !out.isEmpty() && out.get(out.size() - 1).isNumber();
    int start = at;
    at += length;
    boolean before = length > 0 && number().isPresent();
    at = start;
    if (!behind || !before) {
      return false;
    }
    put(Token.Kind.MARK, "/", at, at + length);
    at += length;
    return true;
  }

  /** Puts a sign for plus and minus before a number, and for plus behind one. */
  private boolean sign() {
    Optional<String> mark = words.sign(text(at));
    if (mark.isEmpty()) {
      return false;
    }
    int sign = at++;
    int number = at;
    boolean before = number().isPresent();
    at = number;
    boolean behind = mark.get().equals("+") && !out.isEmpty() && out.get(out.size() - 1).isNumber();
    if (!before && !behind) {
      at = sign;
      return false;
    }
    Token word = tokens.get(sign);
    int end = before ? tokens.get(number).start() : word.end();
    out.add(word.as(Token.Kind.MARK, mark.get()).endingAt(end));
    return true;
  }

  private boolean isWord(int place) {
    return tokens.get(place).kind() == Token.Kind.WORD;
  }

  /** Adds what stands from a place to another, the stroke between two numbers at the first. */
  private void put(Token.Kind kind, String text, int from, int to) {
    Token first = tokens.get(from);
    Token last = tokens.get(Math.max(from, to - 1));
    String seen = kind == Token.Kind.MARK && from == to ? "" : seen(from, to);
    int end = from == to ? first.start() : last.end();
    out.add(new Token(kind, text, seen, first.start(), end, first.line(), first.column()));
  }

  private String seen(int from, int to) {
    StringBuilder seen = new StringBuilder();
    for (int i = from; i < to; i++) {
      seen.append(i > from ? " " : "").append(tokens.get(i).seen());
    }
    return seen.toString();
  }

  private String text(int place) {
    return place >= 0 && place < tokens.size() ? tokens.get(place).text() : "";
  }
}
