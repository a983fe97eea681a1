package org.isopter.model.drawing;

/**
 * A picture of one part of an examination.
 *
 * @param id a word that no other picture of the examination has
 * @param title what it is of
 * @param description all that it shows, in words
 * @param width its width in pixels
 * @param height its height in pixels
 * @param shapes what is inside the SVG
 */
public record Picture(
    String id, String title, String description, int width, int height, String shapes) {

  /** Returns the picture as an SVG element with title and description. */
  public String svg() {
    return """
        <svg xmlns="http://www.w3.org/2000/svg" role="img" aria-labelledby="%1$s-title %1$s-text" \
        viewBox="0 0 %4$d %5$d" width="%4$d" height="%5$d" font-family="sans-serif" font-size="12">
        <title id="%1$s-title">%2$s</title>
        <desc id="%1$s-text">%3$s</desc>
        %6$s</svg>
        """
        .formatted(id, Svg.escaped(title), Svg.escaped(description), width, height, shapes);
  }
}
