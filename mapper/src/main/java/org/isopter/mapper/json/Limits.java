package org.isopter.mapper.json;

/**
 * How much a document may ask of the machine before it is refused.
 *
 * @param depth the deepest nesting of objects and lists
 * @param stringLength the longest string, in characters
 * @param documentLength the longest document, in bytes
 */
public record Limits(int depth, int stringLength, long documentLength) {

  /**
   * Ample for a hospital's bundles: 200 levels, strings of 20 million, documents of 500 million.
   */
  public static final Limits USUAL = new Limits(200, 20_000_000, 500_000_000L);

  public Limits {
    if (depth < 1 || stringLength < 1 || documentLength < 1) {
      throw new IllegalArgumentException("limits must be positive");
    }
  }
}
