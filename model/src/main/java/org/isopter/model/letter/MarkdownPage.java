package org.isopter.model.letter;

import java.util.List;
import java.util.stream.Collectors;

/** A letter in Markdown. */
final class MarkdownPage implements Page {

  @Override
  public String head(String title, List<String> lines) {
    return "# "
        + escape(title)
        + "\n\n"
        + lines.stream().map(this::paragraph).collect(Collectors.joining("\n"));
  }

  @Override
  public String section(String heading, List<String> items) {
    return "## " + escape(heading) + "\n\n" + items(items);
  }

  @Override
  public String paragraph(String text) {
    return escape(text) + "\n";
  }

  private static String items(List<String> items) {
    return items.stream().map(item -> "- " + escape(item) + "\n").collect(Collectors.joining());
  }

  @Override
  public String table(List<Summary.Row> rows, String both) {
    String below = both.isEmpty() ? "" : paragraph(both);
    if (rows.isEmpty()) {
      return below;
    }
    String eyes = rows(rows);
    return below.isEmpty() ? eyes : eyes + "\n" + below;
  }

  private static String rows(List<Summary.Row> rows) {
    return "| | Right eye | Left eye |\n|---|---|---|\n"
        + rows.stream()
            .map(row -> line(row.title(), row.right(), row.left()))
            .collect(Collectors.joining());
  }

  private static String line(String title, String right, String left) {
    return "| %s | %s | %s |\n".formatted(escape(title), escape(right), escape(left));
  }

  /** What was written by people must not turn into marks. */
  private static String escape(String text) {
    return text.replaceAll("([\\\\`*_<>|#\\[\\]])", "\\\\$1").replaceAll("\\R", "<br>");
  }
}
