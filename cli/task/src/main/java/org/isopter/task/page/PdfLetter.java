package org.isopter.task.page;

import com.openhtmltopdf.outputdevice.helper.BaseRendererBuilder.FontStyle;
import com.openhtmltopdf.pdfboxout.PdfRendererBuilder;
import com.openhtmltopdf.pdfboxout.PdfRendererBuilder.PdfAConformance;
import com.openhtmltopdf.svgsupport.BatikSVGDrawer;
import com.openhtmltopdf.util.XRLog;
import java.awt.color.ColorSpace;
import java.awt.color.ICC_Profile;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import org.isopter.model.value.FaultException;

/**
 * Prints a letter as PDF/A-3A (ISO 19005-3) that is also PDF/UA-1 (ISO 14289-1): to be archived,
 * and to be read aloud by a screen reader. The fonts are in the file.
 */
public final class PdfLetter {

  private static final String FONTS = "/net/sf/jasperreports/fonts/dejavu/";
  static final String REGULAR_FONT = "DejaVuSans.ttf";
  private static final int REGULAR = 400;
  private static final int BOLD = 700;

  private PdfLetter() {}

  /**
   * Returns a letter in HTML as PDF.
   *
   * @throws FaultException when it holds a character that the font has no picture of
   * @throws UncheckedIOException when it cannot be laid out
   */
  public static byte[] of(String html) {
    XRLog.setLoggingEnabled(false);
    Glyphs.require(html);
    ByteArrayOutputStream pdf = new ByteArrayOutputStream();
    PdfRendererBuilder builder =
        new PdfRendererBuilder()
            .usePdfAConformance(PdfAConformance.PDFA_3_A)
            .usePdfUaAccessibility(true)
            .useColorProfile(ICC_Profile.getInstance(ColorSpace.CS_sRGB).getData())
            .useFont(() -> font(REGULAR_FONT), PrintedPage.FONT, REGULAR, FontStyle.NORMAL, true)
            .useFont(
                () -> font("DejaVuSans-Bold.ttf"), PrintedPage.FONT, BOLD, FontStyle.NORMAL, true)
            .withProducer("Isopter")
            .withW3cDocument(PrintedPage.of(html), null)
            .toStream(pdf);
    try (BatikSVGDrawer pictures = new BatikSVGDrawer()) {
      builder.useSVGDrawer(pictures).run();
    } catch (IOException failed) {
      throw new UncheckedIOException(failed);
    }
    return pdf.toByteArray();
  }

  static InputStream font(String name) {
    InputStream font = PdfLetter.class.getResourceAsStream(FONTS + name);
    if (font == null) {
      throw new IllegalStateException("the class path has no font " + name);
    }
    return font;
  }
}
