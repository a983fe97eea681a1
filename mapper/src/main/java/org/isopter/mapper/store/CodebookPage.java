package org.isopter.mapper.store;

import java.util.List;
import org.isopter.model.value.Unit;

/** Writes the codebook for people, with only the columns that hold something. */
final class CodebookPage {

  private CodebookPage() {}

  static String of(List<CodebookRow> rows) {
    StringBuilder page = new StringBuilder("# Codebook\n");
    String table = "";
    long empty = 0;
    for (CodebookRow row : rows) {
      if (!row.table().equals(table)) {
        table = row.table();
        page.append("\n## ").append(table).append("\n\n");
        page.append("| column | kind | unit | filled | least | most | meaning |\n");
        page.append("|---|---|---|---:|---:|---:|---|\n");
      }
      if (row.filled() == 0) {
        empty++;
      } else {
        line(page, row);
      }
    }
    page.append("\nColumns without any value, which `codebook.csv` lists too: ").append(empty);
    return page.append(".\n").toString();
  }

  private static void line(StringBuilder page, CodebookRow row) {
    String unit = row.column().unit().map(Unit::label).orElse("");
    String answers = row.answers().map(list -> " (" + list + ")").orElse("");
    page.append("| ").append(row.column().name());
    page.append(" | ").append(Codebook.kind(row));
    page.append(" | ").append(unit);
    page.append(" | ").append(row.filled());
    page.append(" | ").append(row.least().orElse(""));
    page.append(" | ").append(row.most().orElse(""));
    page.append(" | ").append(row.column().meaning()).append(escaped(answers)).append(" |\n");
  }

  private static String escaped(String text) {
    return text.replace("|", "\\|");
  }
}
