package org.isopter.task.page;

import java.util.List;
import java.util.stream.Collectors;
import org.isopter.model.finding.Answers;
import org.isopter.model.finding.Citation;
import org.isopter.model.finding.Finding;
import org.isopter.model.finding.Rule;

/** The catalogue for a terminal: one finding in full, or many with a line each. */
final class CatalogueText {

  private static final int WIDTH = 28;

  private CatalogueText() {}

  static String of(List<Finding<?>> findings) {
    return findings.size() == 1
        ? full(findings.get(0))
        : findings.stream().map(CatalogueText::line).collect(Collectors.joining());
  }

  private static String line(Finding<?> finding) {
    return pad(finding.id(), WIDTH) + finding.title() + "\n";
  }

  private static String full(Finding<?> finding) {
    StringBuilder page = new StringBuilder(finding.id()).append('\n');
    row(page, "title", finding.title());
    row(page, "site", CatalogueRows.sites(finding));
    CatalogueRows.codes(finding).forEach(code -> row(page, "code", code(code)));
    CatalogueRows.values(finding).forEach(value -> row(page, value.key(), value(value)));
    finding.methods().map(Answers::choices).ifPresent(words -> row(page, "method", words));
    finding.layout().rules().stream().map(Rule::sentence).forEach(rule -> row(page, "rule", rule));
    if (!finding.distinguishing().isEmpty()) {
      row(page, "told apart by", String.join(", ", finding.distinguishing()));
    }
    if (!finding.note().isEmpty()) {
      row(page, "note", finding.note());
    }
    finding.citations().stream().map(Citation::text).forEach(text -> row(page, "source", text));
    return page.toString();
  }

  private static String code(CatalogueRows.CodeRow row) {
    String where = row.where().isEmpty() ? "" : "  (" + row.where() + ")";
    return CatalogueRows.system(row.code())
        + " "
        + row.code().code()
        + "  "
        + row.code().display()
        + where;
  }

  private static String value(CatalogueRows.ValueRow row) {
    String notation = row.notation().isEmpty() ? "" : row.notation() + ": ";
    return notation + row.mayBe() + (row.need().equals("required") ? "" : "  (" + row.need() + ")");
  }

  private static void row(StringBuilder page, String word, String text) {
    page.append("  ").append(pad(word, 20)).append(text).append('\n');
  }

  private static String pad(String text, int width) {
    return text + " ".repeat(Math.max(1, width - text.length()));
  }
}
