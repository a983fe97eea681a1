package org.isopter.task.page;

import java.io.IOException;
import java.io.StringReader;
import javax.xml.XMLConstants;
import javax.xml.parsers.DocumentBuilderFactory;
import javax.xml.parsers.ParserConfigurationException;
import org.w3c.dom.Document;
import org.w3c.dom.Element;
import org.w3c.dom.Node;
import org.w3c.dom.NodeList;
import org.xml.sax.InputSource;
import org.xml.sax.SAXException;

/**
 * Readies the page of a letter for paper: size, font, the caution on each page, pictures in words.
 */
final class PrintedPage {

  static final String FONT = "DejaVu Sans";

  private static final String STYLE =
      """
      @page { size: A4; margin: 16mm 15mm 24mm 15mm;
        @bottom-left { content: element(caution); width: 160mm; }
        @bottom-right { content: counter(page) "/" counter(pages); font: 7.5pt "DejaVu Sans";
          width: 20mm; text-align: right; } }
      h1 { font-size: 13pt; } h2 { font-size: 10.5pt; }
      h1, h2 { page-break-after: avoid; }
      body { font-family: "DejaVu Sans"; font-size: 8.5pt; line-height: 1.35; margin: 0; }
      main { display: block; }
      footer { display: block; position: running(caution); }
      footer p { border: 0; padding: 0; font-size: 7.5pt; }
      figure { page-break-inside: avoid; }
      svg { width: 114mm; }
      """;

  private final Document page;

  private PrintedPage(Document page) {
    this.page = page;
  }

  /** Returns the page as a document; the HTML of a letter is well-formed XML. */
  static Document of(String html) {
    PrintedPage printed = new PrintedPage(parsed(html));
    printed.style();
    printed.foot();
    printed.pictures();
    return printed.page;
  }

  private static Document parsed(String html) {
    try {
      DocumentBuilderFactory factory = DocumentBuilderFactory.newDefaultNSInstance();
      factory.setFeature(XMLConstants.FEATURE_SECURE_PROCESSING, true);
      factory.setAttribute(XMLConstants.ACCESS_EXTERNAL_DTD, "");
      factory.setAttribute(XMLConstants.ACCESS_EXTERNAL_SCHEMA, "");
      return factory.newDocumentBuilder().parse(new InputSource(new StringReader(html)));
    } catch (ParserConfigurationException | SAXException | IOException failed) {
      throw new IllegalStateException("the page is no well-formed XML", failed);
    }
  }

  private void style() {
    Element style = (Element) page.getElementsByTagName("style").item(0);
    style.appendChild(page.createTextNode(STYLE));
  }

  /** What stands at the foot of every page is named before the text of the first one. */
  private void foot() {
    Node body = page.getElementsByTagName("body").item(0);
    body.insertBefore(page.getElementsByTagName("footer").item(0), body.getFirstChild());
  }

  /** Gives every picture its words: a reader that cannot see it reads them instead. */
  private void pictures() {
    NodeList pictures = page.getElementsByTagName("svg");
    for (int i = 0; i < pictures.getLength(); i++) {
      Element picture = (Element) pictures.item(i);
      picture.setAttribute("alt", text(picture, "title") + ". " + text(picture, "desc"));
      picture.setAttribute("font-family", FONT);
    }
  }

  private static String text(Element picture, String name) {
    return picture.getElementsByTagName(name).item(0).getTextContent();
  }
}
