package org.isopter.mapper.cda;

import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.regex.Pattern;
import org.w3c.dom.Element;
import org.w3c.dom.Node;
import org.w3c.dom.Text;

/**
 * The text for people of a document, which is what its author signed (HL7 CDA R2, 1.2.3): the words
 * of what has an id, the row of a table in which it stands, and the words of a section.
 */
final class CdaNarrative {

  /** What a table says of the range in which a value is expected is none of the value. */
  private static final Pattern RANGE =
      Pattern.compile("(?i)(expected|reference|normal)( range| values?)?\\s*:.*");

  /** Elements inside a line of words. */
  private static final Set<String> WITHIN = Set.of("content", "sub", "sup", "linkHtml");

  private final Map<String, CdaNode> byId = new HashMap<>();

  private CdaNarrative() {}

  static CdaNarrative of(CdaNode document) {
    CdaNarrative all = new CdaNarrative();
    all.add(document);
    return all;
  }

  private void add(CdaNode at) {
    at.attribute("ID").ifPresent(id -> byId.put("#" + id, at));
    at.children().forEach(this::add);
  }

  /** Returns the words to which a reference leads, such as {@code #iop1}. */
  Optional<String> words(String reference) {
    return Optional.ofNullable(byId.get(reference)).map(CdaNarrative::text);
  }

  /** Returns the row of a table in which stands what a reference leads to, in words. */
  Optional<String> row(String reference) {
    return Optional.ofNullable(byId.get(reference))
        .flatMap(at -> above(at, "tr"))
        .map(CdaNarrative::cells);
  }

  private static String cells(CdaNode row) {
    List<String> cells =
        row.children().stream()
            .map(CdaNarrative::text)
            .filter(cell -> !cell.isEmpty() && !RANGE.matcher(cell).matches())
            .toList();
    return String.join(" ", cells);
  }

  /** Returns the words of the section around an entry; empty text where it has none. */
  static String ofSection(CdaNode entry) {
    return above(entry, "section")
        .flatMap(section -> section.first("text"))
        .map(CdaNarrative::text)
        .orElse("");
  }

  /** Cells, items and paragraphs are words apart, whether there is a blank between them or not. */
  private static String text(CdaNode at) {
    StringBuilder words = new StringBuilder();
    append(at.element(), words);
    return words.toString().replaceAll("\\s+", " ").strip();
  }

  private static void append(Node at, StringBuilder words) {
    for (Node child = at.getFirstChild(); child != null; child = child.getNextSibling()) {
      boolean within = child instanceof Element inside && WITHIN.contains(inside.getLocalName());
      String gap = within ? "" : " ";
      if (child instanceof Element) {
        words.append(gap);
        append(child, words);
        words.append(gap);
      } else if (child instanceof Text text) {
        words.append(text.getData());
      }
    }
  }

  private static Optional<CdaNode> above(CdaNode at, String name) {
    Node node = at.element();
    while (node instanceof Element element) {
      CdaNode here = new CdaNode(element);
      if (here.name().equals(name)) {
        return Optional.of(here);
      }
      node = element.getParentNode();
    }
    return Optional.empty();
  }
}
