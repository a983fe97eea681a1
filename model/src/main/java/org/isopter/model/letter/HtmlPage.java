package org.isopter.model.letter;

import java.util.List;
import java.util.Optional;
import java.util.stream.Collectors;
import org.isopter.model.drawing.Drawing;
import org.isopter.model.drawing.Picture;
import org.isopter.model.drawing.SeenBy;
import org.isopter.model.exam.Exam;

/** A letter as HTML with pictures; the caution stands at the foot of every printed page. */
final class HtmlPage implements Page {

  private static final String STYLE =
      """
      :root { color-scheme: light dark; }
      body { max-width: 60rem; margin: 1rem auto; padding: 0 1rem; font: 1rem/1.45 sans-serif;
        color: #1d2329; background: #ffffff; }
      h1 { font-size: 1.35rem; } h2 { font-size: 1.1rem; }
      table { border-collapse: collapse; width: 100%; }
      th, td { border-bottom: 1px solid #8a949d; padding: 0.3rem 0.6rem 0.3rem 0; text-align: left;
        vertical-align: top; overflow-wrap: anywhere; }
      th { overflow-wrap: normal; }
      @media (max-width: 30rem) { table { font-size: 0.8rem; } }
      figure { margin: 1rem 0; break-inside: avoid; }
      figcaption { font-weight: bold; }
      svg { max-width: 100%; height: auto; color: #1d2329; background: #ffffff; }
      h1, h2 { break-after: avoid; }
      footer p { border-top: 1px solid #8a949d; font-size: 0.8rem; margin: 0; padding: 0.4rem 0; }
      @media (prefers-color-scheme: dark) { body { color: #e9edf0; background: #14181c; } }
      @media print {
        body { color: #000000; background: #ffffff; margin: 0; padding: 0 0.3rem; max-width: none; }
        main { display: table; width: 100%; }
        footer { display: table-footer-group; break-inside: avoid; }
      }
      """;

  private final SeenBy view;

  HtmlPage(SeenBy view) {
    this.view = view;
  }

  @Override
  public String head(String title, List<String> lines) {
    return "<h1>"
        + escape(title)
        + "</h1>\n"
        + lines.stream().map(this::paragraph).collect(Collectors.joining());
  }

  @Override
  public String section(String heading, List<String> items) {
    return "<h2>"
        + escape(heading)
        + "</h2>\n<ul>\n"
        + items.stream()
            .map(item -> "<li>" + escape(item) + "</li>\n")
            .collect(Collectors.joining())
        + "</ul>\n";
  }

  @Override
  public String paragraph(String text) {
    return "<p>" + escape(text) + "</p>\n";
  }

  @Override
  public String table(List<Summary.Row> rows, String both) {
    String below = both.isEmpty() ? "" : paragraph(both);
    return rows.isEmpty() ? below : rows(rows) + below;
  }

  private static String rows(List<Summary.Row> rows) {
    return "<table>\n<thead><tr><td></td><th scope=\"col\">Right eye</th>"
        + "<th scope=\"col\">Left eye</th></tr></thead>\n<tbody>\n"
        + rows.stream().map(HtmlPage::row).collect(Collectors.joining())
        + "</tbody>\n</table>\n";
  }

  private static String row(Summary.Row row) {
    return "<tr><th scope=\"row\">%s</th><td>%s</td><td>%s</td></tr>\n"
        .formatted(escape(row.title()), escape(row.right()), escape(row.left()));
  }

  @Override
  public Optional<String> pictures(Exam exam) {
    return Optional.of(
        Drawing.of(exam, view).stream().map(HtmlPage::figure).collect(Collectors.joining()));
  }

  static String figure(Picture picture) {
    return "<figure>\n<figcaption>%s</figcaption>\n%s</figure>\n"
        .formatted(escape(picture.title()), picture.svg());
  }

  @Override
  public String caution(String text) {
    return "<footer><p>" + escape(text) + "</p></footer>\n";
  }

  @Override
  public String document(String title, String blocks) {
    return """
        <!DOCTYPE html>
        <html lang="en">
        <head>
        <meta charset="utf-8"/>
        <meta http-equiv="Content-Security-Policy" content="default-src 'none'; style-src 'unsafe-inline'"/>
        <meta name="viewport" content="width=device-width, initial-scale=1"/>
        <title>%s</title>
        <style>
        %s</style>
        </head>
        <body>
        <main>
        %s</main>
        </body>
        </html>
        """
        .formatted(escape(title), STYLE, blocks);
  }

  /** What was written by people must not turn into marks. */
  private static String escape(String text) {
    return text.replace("&", "&amp;")
        .replace("<", "&lt;")
        .replace(">", "&gt;")
        .replace("\"", "&quot;")
        .replace("\n", "<br/>");
  }
}
