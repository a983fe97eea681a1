package org.isopter.model.note.token;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import org.isopter.model.note.word.WordFiles;
import org.isopter.model.note.word.WordRole;
import org.isopter.model.phrase.PhraseLine;

/**
 * Puts the numbers of dictated English into digits: six over nine, twenty forty, zero point three,
 * two out of seventeen, minus one point five.
 *
 * <p>Two numbers without a word between are an acuity only where the first is a usual distance and
 * the second a line of a chart (common practice, no source).
 */
public final class SpokenNumbers {

  private static final Map<String, Integer> NUMBERS = new HashMap<>();

  private static final Map<String, String> SIGNS = new HashMap<>();

  private static final List<List<String>> STROKES =
      WordFiles.of(WordRole.OVER).stream().map(Lexer::words).toList();

  static {
    for (PhraseLine line : WordFiles.lines(WordRole.NUMBER)) {
      for (String phrase : line.phrases()) {
        if (line.meaning().matches("\\d+")) {
          NUMBERS.put(phrase, Integer.valueOf(line.meaning()));
        } else {
          SIGNS.put(phrase, line.meaning());
        }
      }
    }
  }

  private static final Set<String> METRES =
      Set.of("4", "5", "6", "7.5", "9", "12", "18", "24", "36", "60");

  private static final Set<String> FEET =
      Set.of("15", "20", "25", "30", "40", "50", "60", "70", "80", "100", "200", "400");

  private final List<Token> tokens;
  private final List<Token> out = new ArrayList<>();
  private int at;

  private SpokenNumbers(List<Token> tokens) {
    this.tokens = tokens;
  }

  /** Returns the tokens with digits in the place of number words. */
  public static List<Token> read(List<Token> tokens) {
    SpokenNumbers spoken = new SpokenNumbers(tokens);
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
      line(number.get(), !tokens.get(start).seen().equals(number.get()));
    } else if (!sign() && !between()) {
      out.add(tokens.get(at++));
    }
  }

  /** Moves past a number in words, or one in digits. */
  private Optional<String> number() {
    if (at < tokens.size() && tokens.get(at).kind() == Token.Kind.NUMBER) {
      String whole = tokens.get(at++).text();
      return Optional.of(whole + (whole.contains(".") ? "" : decimals()));
    }
    int start = at;
    Optional<Integer> whole = whole();
    if (whole.isEmpty()) {
      at = start;
      return WordFiles.is(WordRole.POINT, text(at)) && digit(at + 1).isPresent()
          ? Optional.of("0" + decimals())
          : Optional.empty();
    }
    return Optional.of(whole.get() + decimals());
  }

  private Optional<Integer> whole() {
    Optional<Integer> small = small();
    if (small.isPresent() && value(at, 100, 101).isPresent()) {
      at++;
      return small.map(n -> n * 100 + belowHundred().orElse(0));
    }
    return small.isPresent() ? small : tens();
  }

  private Optional<Integer> belowHundred() {
    return small().or(this::tens);
  }

  private Optional<Integer> small() {
    Optional<Integer> value = value(at, 0, 20);
    boolean person = value.equals(Optional.of(1)) && !isCounted(at + 1);
    if (value.isEmpty() || (person && stroke(at - 1) == 0)) {
      return Optional.empty();
    }
    at++;
    return value;
  }

  private Optional<Integer> tens() {
    Optional<Integer> tens = value(at, 20, 100);
    if (tens.isPresent()) {
      at++;
      Optional<Integer> one = digit(at).filter(n -> n > 0);
      if (one.isPresent()) {
        at++;
      }
      return tens.map(n -> n + one.orElse(0));
    }
    return tens;
  }

  private Optional<Integer> digit(int place) {
    return value(place, 0, 10);
  }

  /** Returns the number that a word stands for, from a bound on and below another. */
  private Optional<Integer> value(int place, int from, int below) {
    return Optional.ofNullable(NUMBERS.get(text(place))).filter(n -> n >= from && n < below);
  }

  /** Says whether a word makes a number of the "one" before it, which else may be a person. */
  private boolean isCounted(int place) {
    return WordFiles.is(WordRole.COUNTED, text(place))
        || WordFiles.is(WordRole.POINT, text(place))
        || SIGNS.getOrDefault(text(place), "").equals("+")
        || value(place, 100, 101).isPresent()
        || stroke(place) > 0;
  }

  /** Returns how many words stand for the stroke of a fraction here. */
  private int stroke(int place) {
    Cursor cursor = new Cursor(tokens, Math.max(0, place));
    boolean found = place >= 0 && place < tokens.size() && STROKES.stream().anyMatch(cursor::take);
    return found ? cursor.place() - place : 0;
  }

  /** Moves past point and digits, in words or in one number. */
  private String decimals() {
    if (!WordFiles.is(WordRole.POINT, text(at))) {
      return "";
    }
    if (at + 1 < tokens.size() && tokens.get(at + 1).text().matches("\\d+")) {
      at += 2;
      return "." + tokens.get(at - 1).text();
    }
    StringBuilder digits = new StringBuilder();
    int next = at + 1;
    while (digit(next).isPresent()) {
      digits.append(digit(next++).orElseThrow());
    }
    at = digits.isEmpty() ? at : next;
    return digits.isEmpty() ? "" : "." + digits;
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
    int length = stroke(at);
    boolean behind = !out.isEmpty() && out.get(out.size() - 1).kind() == Token.Kind.NUMBER;
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
    Optional<String> mark = Optional.ofNullable(SIGNS.get(text(at)));
    if (mark.isEmpty()) {
      return false;
    }
    int sign = at++;
    int number = at;
    boolean before = number().isPresent();
    at = number;
    boolean behind =
        mark.get().equals("+")
            && !out.isEmpty()
            && out.get(out.size() - 1).kind() == Token.Kind.NUMBER;
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

  private String text(int place) {
    return place >= 0 && place < tokens.size() ? tokens.get(place).text() : "";
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
}
