package org.isopter.mapper.describe;

import java.util.List;
import java.util.regex.Matcher;

/** Writes a description as one page of HTML that needs nothing else. */
public final class DescriptionPage {

  private static final String STYLE =
      """
      :root{color-scheme:light dark;--ink:#1b1b1b;--soft:#444;--line:#ddd;--page:#fff}\
      body{font:15px/1.45 system-ui,sans-serif;color:var(--ink);background:var(--page);\
      max-width:72rem;margin:2rem auto;padding:0 1rem}h1{font-size:1.5rem}\
      h2{font-size:1.15rem;margin-top:2.2rem}\
      table{border-collapse:collapse;font-size:.85rem}th,td{padding:.2rem .6rem;text-align:left;\
      border-bottom:1px solid var(--line);vertical-align:top}td.n,th.n{text-align:right;\
      font-variant-numeric:tabular-nums}.plots{display:flex;flex-wrap:wrap;gap:1.2rem}\
      figure{margin:0;max-width:100%;background:#fff;color:#1b1b1b;padding:.5rem;border-radius:4px;\
      break-inside:avoid}figcaption{font-size:.85rem;font-weight:600}\
      p.remark{color:var(--soft);max-width:48rem}.scroll{overflow-x:auto}\
      svg{max-width:100%;height:auto;display:block}\
      @media(max-width:30rem){body{margin:1rem auto;padding:0 .7rem}th,td{padding:.2rem .3rem}}\
      @media(prefers-color-scheme:dark){:root{--ink:#e6e6e6;--soft:#b5b5b5;--line:#444;--page:#161616}}\
      @media print{:root{--ink:#000;--soft:#222;--page:#fff;--line:#999}body{margin:0;max-width:none}\
      .scroll{overflow:visible}table{font-size:.7rem}thead{display:table-header-group}\
      tr{break-inside:avoid}h2{break-after:avoid}figure{padding:0;width:48%}\
      .plots{gap:.6rem 2%}}""";

  private DescriptionPage() {}

  /** Returns the page. */
  public static String of(Description description) {
    StringBuilder page = new StringBuilder();
    page.append("<!DOCTYPE html>\n<html lang=\"en\">\n<head>\n<meta charset=\"utf-8\">\n");
    page.append("<meta name=\"viewport\" content=\"width=device-width, initial-scale=1\">\n");
    page.append("<title>Pool of eye examinations</title>\n<style>");
    page.append(STYLE).append("</style>\n</head>\n<body>\n<h1>Pool of eye examinations</h1>\n");
    page.append("<p class=\"remark\">Counts for those who know the data. They say how much was ");
    page.append("recorded and how; they are no result, and no advice on any person.</p>\n");
    description.listings().forEach(listing -> listing(page, listing));
    Charts charts = new Charts();
    plots(
        page,
        "Numbers",
        "The share of each eye's numbers in classes of equal width.",
        description.spreads().stream()
            .map(spread -> figure(spread.title(), spread.summary(), charts.of(spread)))
            .toList());
    plots(
        page,
        "Answers",
        "Both eyes together.",
        description.answers().stream()
            .map(answered -> figure(answered.title(), answered.summary(), charts.of(answered)))
            .toList());
    return page.append("</body>\n</html>\n").toString();
  }

  private static void listing(StringBuilder page, Listing listing) {
    head(page, listing.title(), listing.remark());
    if (listing.rows().isEmpty()) {
      page.append("<p>None.</p>\n");
      return;
    }
    page.append("<div class=\"scroll\" tabindex=\"0\"><table>\n<thead><tr>");
    cells(page, listing, listing.columns(), "th");
    page.append("</tr></thead>\n<tbody>\n");
    for (List<String> row : listing.rows()) {
      page.append("<tr>");
      cells(page, listing, row, "td");
      page.append("</tr>\n");
    }
    page.append("</tbody></table></div>\n");
  }

  private static void cells(StringBuilder page, Listing listing, List<String> cells, String tag) {
    for (int i = 0; i < cells.size(); i++) {
      page.append('<').append(tag).append(tag.equals("th") ? " scope=\"col\"" : "");
      page.append(listing.isNumber(i) ? " class=\"n\">" : ">");
      page.append(escaped(cells.get(i))).append("</").append(tag).append('>');
    }
  }

  private static void plots(StringBuilder page, String title, String remark, List<String> figures) {
    if (!figures.isEmpty()) {
      head(page, title, remark);
      page.append("<div class=\"plots\">\n");
      figures.forEach(page::append);
      page.append("</div>\n");
    }
  }

  private static void head(StringBuilder page, String title, String remark) {
    page.append("<h2>").append(escaped(title)).append("</h2>\n");
    if (!remark.isEmpty()) {
      page.append("<p class=\"remark\">").append(escaped(remark)).append("</p>\n");
    }
  }

  /** The picture is one thing with a name, for those to whom it is read. */
  private static String figure(String title, String summary, String svg) {
    String named =
        svg.replaceFirst(
            "<svg ",
            Matcher.quoteReplacement(
                "<svg role=\"img\" aria-label=\""
                    + escaped(summary).replace("\"", "&quot;")
                    + "\" "));
    return "<figure><figcaption>" + escaped(title) + "</figcaption>" + named + "</figure>\n";
  }

  private static String escaped(String text) {
    return text.replace("&", "&amp;").replace("<", "&lt;").replace(">", "&gt;");
  }
}
