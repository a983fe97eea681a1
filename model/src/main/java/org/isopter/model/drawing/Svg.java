package org.isopter.model.drawing;

import java.math.BigDecimal;
import java.math.RoundingMode;
import java.util.ArrayList;
import java.util.List;
import org.isopter.model.value.Site;

/** Builds the inside of a picture from shapes and words. */
final class Svg {

  /** The ground of a shape that was not examined. */
  static final String DOTTED = "fill=\"none\" stroke=\"#767676\" stroke-dasharray=\"1 4\"";

  static final String LINE = "fill=\"none\" stroke=\"currentColor\" stroke-width=\"1.5\"";

  private static final int LETTERS = 40;
  private static final int WIDTH = 560;

  private final StringBuilder shapes = new StringBuilder();

  void circle(double x, double y, double radius, String look) {
    ellipse(x, y, radius, radius, look);
  }

  void ellipse(double x, double y, double rx, double ry, String look) {
    shapes.append(
        "<ellipse cx=\"%s\" cy=\"%s\" rx=\"%s\" ry=\"%s\" %s/>\n"
            .formatted(number(x), number(y), number(rx), number(ry), look));
  }

  void path(String path, String look) {
    shapes.append("<path d=\"%s\" %s/>\n".formatted(path, look));
  }

  /** Writes words with their middle at a place. */
  void words(double x, double y, String words, String look) {
    shapes.append(
        "<text x=\"%s\" y=\"%s\" text-anchor=\"middle\" %s>%s</text>\n"
            .formatted(number(x), number(y), look, escaped(words)));
  }

  void words(double x, double y, String words) {
    words(x, y, words, "fill=\"currentColor\"");
  }

  /** Writes lines under each other, folded where they are long, and returns where the next goes. */
  double lines(double x, double y, List<String> lines) {
    double at = y;
    for (String line : lines) {
      for (String piece : folded(line)) {
        words(x, at, piece);
        at += 15;
      }
    }
    return at;
  }

  /** Writes the name of an eye above what is drawn of it. */
  void title(double x, Site eye) {
    words(x, 16, name(eye), "fill=\"currentColor\" font-weight=\"bold\"");
  }

  /** Returns what is said of an eye, as sentences. */
  static String said(Site eye, List<String> lines) {
    return name(eye) + ". " + String.join(". ", lines) + ".";
  }

  private static String name(Site eye) {
    return eye == Site.RIGHT ? "Right eye" : "Left eye";
  }

  /**
   * Writes what is said of both eyes together below a height, and returns the picture that was
   * drawn, described by what is said of each eye and of both.
   */
  Picture picture(
      String id,
      String title,
      List<String> right,
      List<String> left,
      List<String> both,
      double below) {
    String description =
        said(Site.RIGHT, right) + " " + said(Site.LEFT, left) + " " + String.join(". ", both) + ".";
    return picture(id, title, description, lines(280, below + 8, both));
  }

  /** Returns the picture of both eyes that was drawn, which ends at a height. */
  Picture picture(String id, String title, String description, double end) {
    return new Picture(id, title, description, WIDTH, (int) end + 5, shapes.toString());
  }

  private static List<String> folded(String line) {
    List<String> pieces = new ArrayList<>();
    StringBuilder piece = new StringBuilder();
    for (String word : line.split(" ", -1)) {
      if (piece.length() > 0 && piece.length() + word.length() >= LETTERS) {
        pieces.add(piece.toString());
        piece.setLength(0);
      }
      piece.append(piece.length() == 0 ? "" : " ").append(word);
    }
    pieces.add(piece.toString());
    return pieces;
  }

  /** Returns a number with two decimals at most; the same text everywhere. */
  static String number(double value) {
    return new BigDecimal(value)
        .setScale(2, RoundingMode.HALF_UP)
        .stripTrailingZeros()
        .toPlainString();
  }

  /** Returns words as XML takes them. */
  static String escaped(String words) {
    return words
        .replace("&", "&amp;")
        .replace("<", "&lt;")
        .replace(">", "&gt;")
        .replace("\"", "&quot;");
  }
}
