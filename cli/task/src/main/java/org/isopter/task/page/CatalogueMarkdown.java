package org.isopter.task.page;

import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.stream.Collectors;
import org.isopter.model.exam.AdministrativeSex;
import org.isopter.model.exam.Setting;
import org.isopter.model.finding.Answers;
import org.isopter.model.finding.Citation;
import org.isopter.model.finding.Finding;
import org.isopter.model.finding.Rule;
import org.isopter.model.value.Absence;
import org.isopter.model.value.Concept;

/** The catalogue as a Markdown page. */
final class CatalogueMarkdown {

  private static final String HEAD =
      """
      # The findings

      Generated from the catalogue by `isopter catalogue --format markdown`. How a value is written
      in a record and in FHIR is said in [mapping](mapping.md).

      A range is what may be recorded, so that slips of the pen are found. It is no normal range and
      says nothing about health.

      """;

  private CatalogueMarkdown() {}

  static String of(List<Finding<?>> findings) {
    StringBuilder page = new StringBuilder(HEAD);
    findings.forEach(finding -> finding(page, finding));
    answers(page, findings);
    return page.toString();
  }

  private static void finding(StringBuilder page, Finding<?> finding) {
    page.append("## ").append(finding.id()).append("\n\n");
    page.append(finding.title())
        .append(". Site: ")
        .append(CatalogueRows.sites(finding))
        .append(".");
    page.append(finding.note().isEmpty() ? "" : " " + finding.note()).append("\n\n");
    codes(page, finding);
    values(page, finding);
    finding.layout().rules().stream()
        .map(Rule::sentence)
        .forEach(rule -> point(page, "Rule", rule));
    finding.methods().ifPresent(list -> point(page, "Method", list.choices()));
    if (!finding.distinguishing().isEmpty()) {
      point(page, "Entries of one eye are told apart by", words(finding.distinguishing()));
    }
    finding.citations().stream().map(Citation::text).forEach(text -> point(page, "Source", text));
    page.append('\n');
  }

  private static void codes(StringBuilder page, Finding<?> finding) {
    header(page, "system", "code", "display", "holds for");
    for (CatalogueRows.CodeRow row : CatalogueRows.codes(finding)) {
      String where = row.where().isEmpty() ? "every site" : row.where();
      row(page, CatalogueRows.system(row.code()), row.code().code(), row.code().display(), where);
    }
    page.append('\n');
  }

  private static void values(StringBuilder page, Finding<?> finding) {
    header(page, "key", "notation", "may be", "need");
    for (CatalogueRows.ValueRow row : CatalogueRows.values(finding)) {
      row(page, "`" + row.key() + "`", row.notation(), row.mayBe(), row.need());
    }
    page.append('\n');
  }

  private static void answers(StringBuilder page, List<Finding<?>> findings) {
    Map<String, Answers> lists = new LinkedHashMap<>();
    findings.stream()
        .flatMap(finding -> CatalogueRows.answers(finding).stream())
        .forEach(list -> lists.put(list.id(), list));
    page.append("# The answers\n\n");
    lists.values().forEach(list -> list(page, list.id(), list.concepts()));
    list(page, "absent", Arrays.asList(Absence.values()));
    list(page, "setting", Arrays.asList(Setting.values()));
    list(page, "administrative-sex", Arrays.asList(AdministrativeSex.values()));
    page.setLength(page.length() - 1);
  }

  private static void list(StringBuilder page, String name, List<? extends Concept> concepts) {
    page.append("## ").append(name).append("\n\n");
    header(page, "word", "system", "code", "display");
    for (Concept concept : concepts) {
      row(
          page,
          "`" + concept.word() + "`",
          CatalogueRows.system(concept.code()),
          concept.code().code(),
          concept.code().display());
    }
    page.append('\n');
  }

  private static void header(StringBuilder page, String... names) {
    row(page, names);
    page.append("|---".repeat(names.length)).append("|\n");
  }

  private static void row(StringBuilder page, String... cells) {
    page.append(Arrays.stream(cells).collect(Collectors.joining(" | ", "| ", " |\n")));
  }

  private static void point(StringBuilder page, String word, String text) {
    page.append("* ").append(word).append(": ").append(text).append('\n');
  }

  private static String words(List<String> keys) {
    return keys.stream().map(key -> "`" + key + "`").collect(Collectors.joining(", "));
  }
}
