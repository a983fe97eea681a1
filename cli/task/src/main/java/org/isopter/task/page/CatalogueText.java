package org.isopter.task.page;

import java.util.List;
import java.util.stream.Collectors;
import org.isopter.model.finding.Answers;
import org.isopter.model.finding.Citation;
import org.isopter.model.finding.Finding;
import org.isopter.model.finding.Rule;

/** The catalogue for a terminal: one finding in full, or many with a line each. */
final class CatalogueText {

  private CatalogueText() {}

  static String of(List<Finding<?>> findings) {
    return findings.size() == 1
        ? full(findings.get(0))
        : findings.stream().map(CatalogueText::line).collect(Collectors.joining());
  }

  private static String line(Finding<?> finding) {
    return TermList.line(finding.id(), finding.title());
  }

  private static String full(Finding<?> finding) {
    TermList page = new TermList(finding.id());
    page.row("title", finding.title());
    page.row("site", CatalogueRows.sites(finding));
    CatalogueRows.codes(finding).forEach(code -> page.row("code", code(code)));
    CatalogueRows.values(finding).forEach(value -> page.row(value.key(), value(value)));
    finding.methods().map(Answers::choices).ifPresent(words -> page.row("method", words));
    finding.layout().rules().stream().map(Rule::sentence).forEach(rule -> page.row("rule", rule));
    if (!finding.distinguishing().isEmpty()) {
      page.row("told apart by", String.join(", ", finding.distinguishing()));
    }
    if (!finding.note().isEmpty()) {
      page.row("note", finding.note());
    }
    finding.citations().stream().map(Citation::text).forEach(text -> page.row("source", text));
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
}
