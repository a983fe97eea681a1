package org.isopter.model.letter;

import java.util.Comparator;
import java.util.List;
import java.util.stream.Collectors;
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
   * @param changes what changed, a paragraph each
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
            + "<h2>What changed</h2>\n"
            + changes.stream().map(page::paragraph).collect(Collectors.joining())
            + page.caution(Caution.TEXT));
  }
}
