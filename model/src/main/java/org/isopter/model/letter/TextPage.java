package org.isopter.model.letter;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.StringTokenizer;
import java.util.stream.Collectors;
import org.isopter.model.text.TextColumns;

/** A letter in plain text, at most 100 characters wide. */
final class TextPage implements Page {

  private static final int WIDTH = 100;
  private static final int FIRST = 13;
  private static final int EYE = 42;

  @Override
  public String head(String title, List<String> lines) {
    return paragraph(title) + lines.stream().map(this::paragraph).collect(Collectors.joining());
  }

  @Override
  public String section(String heading, List<String> items) {
    return heading + ":\n" + items(items);
  }

  @Override
  public String paragraph(String text) {
    return Arrays.stream(text.stripTrailing().split("\r?\n", -1))
        .flatMap(line -> wrap(line, WIDTH).stream())
        .map(line -> line + "\n")
        .collect(Collectors.joining());
  }

  private static String items(List<String> items) {
    StringBuilder page = new StringBuilder();
    for (String item : items) {
      String lead = "- ";
      for (String line : wrap(item, WIDTH - 2)) {
        page.append(lead).append(line).append('\n');
        lead = "  ";
      }
    }
    return page.toString();
  }

  @Override
  public String table(List<Summary.Row> rows, String both) {
    StringBuilder page = new StringBuilder();
    if (!rows.isEmpty()) {
      row(page, new Summary.Row("", "Right eye", "Left eye"));
      rows.forEach(row -> row(page, row));
    }
    return page + (both.isEmpty() ? "" : paragraph(both));
  }

  private static void row(StringBuilder page, Summary.Row row) {
    List<String> title = wrap(row.title(), FIRST);
    List<String> right = wrap(row.right(), EYE);
    List<String> left = wrap(row.left(), EYE);
    int lines = Math.max(title.size(), Math.max(right.size(), left.size()));
    for (int i = 0; i < lines; i++) {
      String line = cell(title, i, FIRST + 1) + cell(right, i, EYE + 2) + cell(left, i, 0);
      page.append(line.stripTrailing()).append('\n');
    }
  }

  private static String cell(List<String> lines, int index, int width) {
    return TextColumns.left(index < lines.size() ? lines.get(index) : "", width);
  }

  private static List<String> wrap(String text, int width) {
    List<String> lines = new ArrayList<>();
    StringBuilder line = new StringBuilder();
    StringTokenizer words = new StringTokenizer(text);
    while (words.hasMoreTokens()) {
      String word = words.nextToken();
      if (line.length() > 0 && line.length() + 1 + word.length() > width) {
        lines.add(line.toString());
        line.setLength(0);
      }
      line.append(line.length() == 0 ? "" : " ").append(word);
    }
    lines.add(line.toString());
    return lines;
  }
}
