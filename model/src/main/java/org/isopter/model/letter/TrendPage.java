package org.isopter.model.letter;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.isopter.model.clinical.statement.Caution;
import org.isopter.model.drawing.SeenBy;
import org.isopter.model.drawing.Trend;
import org.isopter.model.exam.Exam;
import org.isopter.model.exam.Identifier;
import org.isopter.model.exam.Party;

/** The examinations of one person as a page of HTML: pictures over time, and what changed. */
public final class TrendPage {

  private TrendPage() {}

  /**
   * Returns the page.
   *
   * @param exams the examinations of one person, at least one, in any order
   * @param changes what changed from each to the next, as text: which two, a line for each finding,
   *     and what is said of it on indented lines; the caution may stand at the end
   */
  public static String html(List<Exam> exams, List<String> changes) {
    HtmlPage page = new HtmlPage(SeenBy.USUAL);
    List<Exam> inOrder =
        exams.stream().sorted(Comparator.comparing(exam -> exam.header().performed())).toList();
    Party subject = inOrder.get(0).header().subject();
    String title =
        "Eye examinations: "
            + subject.name().or(() -> subject.identifier().map(Identifier::value)).orElse("");
    String days =
        inOrder.stream()
            .map(exam -> exam.header().performed().toLocalDate().toString())
            .collect(Collectors.joining(", "));
    String pictures = Trend.of(exams).stream().map(HtmlPage::figure).collect(Collectors.joining());
    return page.document(
        title,
        page.head(title, List.of("Examined on " + days + "."))
            + (pictures.isEmpty()
                ? page.paragraph("Nothing that is drawn was measured twice in the same way.")
                : pictures)
            + changes.stream().map(text -> changed(page, text)).collect(Collectors.joining())
            + page.caution(Caution.TEXT));
  }

  private static String changed(HtmlPage page, String text) {
    List<String> lines =
        Stream.of(text.strip().split("\n", -1))
            .filter(line -> !line.strip().equals(Caution.TEXT))
            .toList();
    List<String> items = new ArrayList<>();
    for (String line : lines.subList(1, lines.size())) {
      if (line.startsWith(" ") && !items.isEmpty()) {
        items.set(items.size() - 1, items.get(items.size() - 1) + "; " + line.strip());
      } else {
        items.add(line);
      }
    }
    return page.section(
        "What changed, " + arrow(lines.get(0)), items.stream().map(TrendPage::arrow).toList());
  }

  /** A browser breaks a line within the two signs of an arrow. */
  private static String arrow(String line) {
    return line.replace(" -> ", " \u2192 ");
  }
}
