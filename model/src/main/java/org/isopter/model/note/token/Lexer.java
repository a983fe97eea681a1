package org.isopter.model.note.token;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.isopter.model.value.LowerCase;

/** Cuts a note into words, numbers and marks, each with its place. */
public final class Lexer {

  /** What stands between pieces: also the spaces that a word processor puts into a text. */
  private static final String SPACE = "[\\s\\p{Z}]";

  /** The small word that French writes together with the next one is a word of its own: l'oeil. */
  private static final Pattern PIECE =
      Pattern.compile(
          "(?<number>(?:\\d|\\.(?=\\d))(?:\\d|[.,](?=\\d))*)"
              + "|(?<word>(?:[DdLlNnSs]|[Qq]u)['\u2019](?=\\p{L}{2}|$)|\\p{L}+(?:['\u2019]\\p{L}+)*)"
              + "|(?<hyphen>(?<=\\p{L})-(?=\\p{L}))"
              + "|(?<break>[;\\n]|\\.(?="
              + SPACE
              + "|$))"
              + "|(?!"
              + SPACE
              + ")(?<mark>.)",
          Pattern.DOTALL);

  private static final Pattern NUMBER = Pattern.compile("\\d*\\.?\\d+");

  private static final Map<String, String> SAME_MARK =
      Map.of(
          "\u2212", "-", "\u2013", "-", "\u00D7", "x", "\u2192", ">", "&", "and", "[", "(", "]",
          ")");

  private static final String ORDINAL = "\u00BA";

  private final List<Token> tokens = new ArrayList<>();
  private int line = 1;
  private int lineStart;
  private final Bullets bullets;
  private final Set<Integer> listNumbers;

  private Lexer(String note) {
    this.bullets = Bullets.in(note);
    this.listNumbers = ListNumbers.in(note);
  }

  /** Returns the tokens of a note, each with its place. */
  public static List<Token> read(String note) {
    Lexer lexer = new Lexer(note);
    Matcher pieces = PIECE.matcher(note);
    while (pieces.find()) {
      lexer.add(pieces);
    }
    return List.copyOf(lexer.tokens);
  }

  /** Returns the texts of the tokens of a phrase. */
  public static List<String> words(String phrase) {
    return read(phrase).stream().map(Token::text).toList();
  }

  private void add(Matcher piece) {
    String seen = piece.group();
    if (listNumbers.contains(piece.start())) {
      add(Token.Kind.BREAK, ".", piece);
    } else if (piece.group("number") != null) {
      // Several points, or a comma, between digits: no number that can be trusted.
      boolean clear = NUMBER.matcher(seen).matches();
      add(clear ? Token.Kind.NUMBER : Token.Kind.MARK, seen, piece);
    } else if (seen.equals(ORDINAL)) {
      // A letter to Unicode; keyboards without a sign for degrees have it instead.
      add(Token.Kind.MARK, "\u00B0", piece);
    } else if (piece.group("word") != null) {
      add(Token.Kind.WORD, LowerCase.of(seen).replace('\u2019', '\''), piece);
    } else if (piece.group("break") != null) {
      add(Token.Kind.BREAK, seen, piece);
      countLine(seen, piece.end());
    } else if (piece.group("mark") != null && !bullets.isOne(piece.start())) {
      String mark = bullets.isUnclear(piece.start()) ? Bullets.UNCLEAR : seen;
      add(Token.Kind.MARK, SAME_MARK.getOrDefault(mark, mark), piece);
    }
  }

  private void add(Token.Kind kind, String text, Matcher piece) {
    int column = piece.start() - lineStart + 1;
    tokens.add(new Token(kind, text, piece.group(), piece.start(), piece.end(), line, column));
  }

  private void countLine(String seen, int end) {
    if (seen.equals("\n")) {
      line++;
      lineStart = end;
    }
  }
}
