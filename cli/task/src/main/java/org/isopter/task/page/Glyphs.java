package org.isopter.task.page;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.util.Locale;
import org.apache.fontbox.ttf.CmapLookup;
import org.apache.fontbox.ttf.TTFParser;
import org.apache.pdfbox.io.RandomAccessReadBuffer;
import org.isopter.model.value.Fault;
import org.isopter.model.value.FaultException;

/**
 * Which characters the font of a printed page has; one that it lacks would be printed as a mark.
 */
final class Glyphs {

  private static final CmapLookup FONT = load();

  private Glyphs() {}

  /**
   * Does nothing where all can be printed.
   *
   * @throws FaultException when a character cannot
   */
  static void require(String text) {
    text.codePoints()
        .filter(character -> character >= ' ' && FONT.getGlyphId(character) == 0)
        .findFirst()
        .ifPresent(
            character -> {
              throw new FaultException(
                  new Fault(
                      "",
                      String.format(Locale.ROOT, "the character %c (U+%04X)", character, character),
                      "characters of the font of the page, DejaVu Sans",
                      "use --format html, which takes the fonts of the reader's machine"));
            });
  }

  private static CmapLookup load() {
    try (var font =
        new TTFParser().parse(new RandomAccessReadBuffer(PdfLetter.font(PdfLetter.REGULAR_FONT)))) {
      return font.getUnicodeCmapLookup();
    } catch (IOException failed) {
      throw new UncheckedIOException(failed);
    }
  }
}
