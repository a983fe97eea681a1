package org.isopter.model.note.token;

import java.util.List;
import java.util.Optional;
import java.util.Set;
import org.isopter.model.note.word.WordFiles;
import org.isopter.model.note.word.WordRole;

/** Counts in words: seventeen, vingt et un, quatre-vingt-dix, doscientos. */
final class SpokenCount {

  private static final List<List<String>> STROKES =
      WordFiles.of(WordRole.OVER).stream().map(Lexer::words).toList();

  /** French counts on behind these tens: soixante-quinze, quatre-vingt-dix. */
  private static final Set<Integer> COUNTED_ON = Set.of(60, 80);

  private final List<Token> tokens;
  private final NumberWords words;
  private int at;

  SpokenCount(List<Token> tokens, NumberWords words) {
    this.tokens = tokens;
    this.words = words;
  }

  /** Returns the number that stands at a place, if one does; {@link #end} is behind it. */
  Optional<Integer> read(int place) {
    at = place;
    return whole();
  }

  /** Returns the tens that stand at a place, with the ones behind them. */
  Optional<Integer> readTens(int place) {
    at = place;
    return tens();
  }

  /** Returns the place behind the number that was read last. */
  int end() {
    return at;
  }

  private Optional<Integer> whole() {
    Optional<Integer> hundreds = value(at, 101, 1000);
    if (hundreds.isPresent()) {
      at++;
      return hundreds;
    }
    Optional<Integer> small = small();
    if (small.isPresent() && value(at, 100, 101).isPresent()) {
      at++;
      return small.map(n -> n * 100 + belowHundred().orElse(0));
    }
    boolean scores = small.equals(Optional.of(4)) && isScore(at);
    if (scores) {
      at++;
      return Optional.of(onBehind(80));
    }
    return small.isPresent() ? small : tens();
  }

  /** Says whether a word makes eighty of the four before it: quatre-vingts. */
  private boolean isScore(int place) {
    return words.value(text(place), 20, 21).isPresent()
        && words.value("quatre", 4, 5).isPresent()
        && text(place - 1).equals("quatre");
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
    return value.map(n -> n + ofTeens(n));
  }

  /** Moves past the ones behind ten in French and returns them: dix-sept. */
  private int ofTeens(int ten) {
    boolean french = ten == 10 && text(at - 1).equals("dix");
    int ones = french ? value(at, 7, 10).orElse(0) : 0;
    at += ones > 0 ? 1 : 0;
    return ones;
  }

  private Optional<Integer> tens() {
    Optional<Integer> tens = value(at, 20, 100);
    if (tens.isPresent()) {
      at++;
      return tens.map(n -> n % 10 == 0 ? onBehind(n) : n);
    }
    return tens;
  }

  /** Returns tens with the ones behind them. */
  private int onBehind(int tens) {
    int next = words.joins(text(at)) ? at + 1 : at;
    int below = COUNTED_ON.contains(tens) && isFrench(at - 1) ? 20 : 10;
    Optional<Integer> ones = value(next, 1, below);
    at = ones.isPresent() ? next + 1 : at;
    return tens + ones.map(n -> n + ofTeens(n)).orElse(0);
  }

  private boolean isFrench(int place) {
    return NumberWords.languageOf(text(place)).equals(Optional.of("fr"));
  }

  /** Returns the number that a word stands for, from a bound on and below another. */
  private Optional<Integer> value(int place, int from, int below) {
    return words.value(text(place), from, below);
  }

  /** Says whether a word makes a number of the "one" before it, which else may be a person. */
  private boolean isCounted(int place) {
    return WordFiles.is(WordRole.COUNTED, text(place))
        || WordFiles.is(WordRole.POINT, text(place))
        || words.sign(text(place)).equals(Optional.of("+"))
        || words.share(text(place)).isPresent()
        || value(place, 100, 101).isPresent()
        || stroke(place) > 0;
  }

  /** Returns how many words stand for the stroke of a fraction here. */
  int stroke(int place) {
    Cursor cursor = new Cursor(tokens, Math.max(0, place));
    boolean found = place >= 0 && place < tokens.size() && STROKES.stream().anyMatch(cursor::take);
    return found ? cursor.place() - place : 0;
  }

  private String text(int place) {
    return place >= 0 && place < tokens.size() ? tokens.get(place).text() : "";
  }
}
