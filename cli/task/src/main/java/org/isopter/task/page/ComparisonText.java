package org.isopter.task.page;

import java.util.List;
import org.isopter.model.clinical.statement.Caution;
import org.isopter.model.compare.Change;
import org.isopter.model.compare.Comparison;
import org.isopter.model.text.Eyes;
import org.isopter.model.value.Quantity;
import org.isopter.model.value.Unit;
import org.isopter.task.io.Messages;

/** A comparison in words. */
public final class ComparisonText {

  private ComparisonText() {}

  /**
   * Returns the comparison, a paragraph a change; unchanged findings only when all are reported.
   */
  public static String of(Comparison comparison, boolean all) {
    StringBuilder text = new StringBuilder();
    text.append(comparison.earlier().header().id().value())
        .append(" of ")
        .append(comparison.earlier().header().performed().toLocalDate())
        .append(" -> ")
        .append(comparison.later().header().id().value())
        .append(" of ")
        .append(comparison.later().header().performed().toLocalDate())
        .append('\n');
    List<Change> shown =
        comparison.changes().stream()
            .filter(change -> all || change.kind() != Change.Kind.SAME)
            .toList();
    shown.forEach(change -> text.append(paragraph(change)));
    int same = comparison.changes().size() - shown.size();
    if (same > 0) {
      text.append(Messages.count(same, "finding")).append(" unchanged\n");
    }
    return text.append(Caution.TEXT).append('\n').toString();
  }

  private static String paragraph(Change change) {
    StringBuilder text = new StringBuilder(title(change)).append(": ");
    switch (change.kind()) {
      case SAME -> text.append(change.after()).append(", unchanged");
      case DIFFERENT -> text.append(change.before()).append(" -> ").append(change.after());
      case OTHER_TECHNIQUE, UNDER_DROPS ->
          text.append(change.before())
              .append(" -> ")
              .append(change.after())
              .append("; ")
              .append(change.kind().words());
      case ONLY_BEFORE -> text.append(change.before()).append("; ").append(change.kind().words());
      case ONLY_NOW -> text.append(change.after()).append("; ").append(change.kind().words());
    }
    text.append('\n');
    change
        .by()
        .filter(by -> by.value().signum() != 0)
        .ifPresent(by -> text.append("    difference ").append(difference(by)).append('\n'));
    change
        .verdict()
        .ifPresent(
            verdict ->
                text.append("    ")
                    .append(verdict.text())
                    .append(" Source: ")
                    .append(verdict.source().text())
                    .append(".\n"));
    return text.toString();
  }

  private static String title(Change change) {
    String eyes = Eyes.of(change.finding(), change.site()).words();
    return change.finding().title() + (eyes.isEmpty() ? "" : ", " + eyes);
  }

  /** A difference of percentages is one of points; which way of logMAR is better must be said. */
  private static String difference(Quantity by) {
    String sign = by.value().signum() > 0 ? "+" : "";
    if (by.unit().equals(Unit.PERCENT)) {
      return sign + by.value().toPlainString() + " percentage points";
    }
    return sign + by + (by.unit().equals(Unit.LOGMAR) ? ", where less is better" : "");
  }
}
