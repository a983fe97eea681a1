package org.isopter.model.note.token;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;

/**
 * Puts the numbers of dictated English into digits: six over nine, twenty forty, zero point three,
 * two out of seventeen, minus one point five.
 *
 * <p>Two numbers without a word between are an acuity only where the first is a usual distance and
 * the second a line of a chart (common practice, no source).
 */
public final class SpokenNumbers {

  private static final Map<String, Integer> SMALL =
      Map.ofEntries(
          Map.entry("zero", 0),
          Map.entry("nought", 0),
          Map.entry("one", 1),
          Map.entry("two", 2),
          Map.entry("three", 3),
          Map.entry("four", 4),
          Map.entry("five", 5),
          Map.entry("six", 6),
          Map.entry("seven", 7),
          Map.entry("eight", 8),
          Map.entry("nine", 9),
          Map.entry("ten", 10),
          Map.entry("eleven", 11),
          Map.entry("twelve", 12),
          Map.entry("thirteen", 13),
          Map.entry("fourteen", 14),
          Map.entry("fifteen", 15),
          Map.entry("sixteen", 16),
          Map.entry("seventeen", 17),
          Map.entry("eighteen", 18),
          Map.entry("nineteen", 19));

  private static final Map<String, Integer> TENS =
      Map.of(
          "twenty", 20, "thirty", 30, "forty", 40, "fifty", 50, "sixty", 60, "seventy", 70,
          "eighty", 80, "ninety", 90);

  /** What makes a number of the word "one", which may stand for a person or a thing. */
  private static final Set<String> BEHIND_ONE =
      Set.of(
          "metre",
          "meter",
          "m",
          "millimetre",
          "millimeter",
          "mm",
          "foot",
          "plus",
          "point",
          "hundred",
          "over",
          "out",
          "percent",
          "log",
          "dioptre",
          "diopter",
          "and");

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
      return sees("point") && digit(at + 1).isPresent()
          ? Optional.of("0" + decimals())
          : Optional.empty();
    }
    return Optional.of(whole.get() + decimals());
  }

  private Optional<Integer> whole() {
    Optional<Integer> small = small();
    if (small.isPresent() && sees("hundred")) {
      at++;
      return small.map(n -> n * 100 + belowHundred().orElse(0));
    }
    return small.isPresent() ? small : tens();
  }

  private Optional<Integer> belowHundred() {
    return small().or(this::tens);
  }

  private Optional<Integer> small() {
    Optional<Integer> value = Optional.ofNullable(at < tokens.size() ? SMALL.get(text(at)) : null);
    boolean person = value.equals(Optional.of(1)) && !BEHIND_ONE.contains(text(at + 1));
    if (value.isEmpty() || (person && !text(at - 1).equals("over"))) {
      return Optional.empty();
    }
    at++;
    return value;
  }

  private Optional<Integer> tens() {
    Optional<Integer> tens = Optional.ofNullable(at < tokens.size() ? TENS.get(text(at)) : null);
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
    return Optional.ofNullable(place < tokens.size() ? SMALL.get(text(place)) : null)
        .filter(n -> n < 10);
  }

  /** Moves past point and digits, in words or in one number. */
  private String decimals() {
    if (!sees("point")) {
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
    int length =
        sees("over") || sees("slash") ? 1 : sees("out") && text(at + 1).equals("of") ? 2 : 0;
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
    if (!sees("plus") && !sees("minus")) {
      return false;
    }
    int sign = at++;
    int number = at;
    boolean before = number().isPresent();
    at = number;
    boolean behind =
        sees(sign, "plus") && !out.isEmpty() && out.get(out.size() - 1).kind() == Token.Kind.NUMBER;
    if (!before && !behind) {
      at = sign;
      return false;
    }
    Token word = tokens.get(sign);
    int end = before ? tokens.get(number).start() : word.end();
    out.add(word.as(Token.Kind.MARK, word.is("plus") ? "+" : "-").endingAt(end));
    return true;
  }

  private boolean isWord(int place) {
    return tokens.get(place).kind() == Token.Kind.WORD;
  }

  private boolean sees(String word) {
    return sees(at, word);
  }

  private boolean sees(int place, String word) {
    return text(place).equals(word);
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
