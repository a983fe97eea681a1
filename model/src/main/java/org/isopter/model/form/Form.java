package org.isopter.model.form;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import org.isopter.model.finding.Answers;
import org.isopter.model.finding.Finding;
import org.isopter.model.finding.Layout;
import org.isopter.model.finding.Part;
import org.isopter.model.finding.Rule;
import org.isopter.model.finding.Spec;
import org.isopter.model.value.Absence;
import org.isopter.model.value.Canonical;
import org.isopter.model.value.Concept;
import org.isopter.model.value.Site;

/**
 * The questions about a finding, and the names that they have in a form: {@code
 * finding/site/question}.
 */
public final class Form {

  /** The address of the form of all findings. */
  public static final String URL = Canonical.BASE + "/Questionnaire/examination";

  /** The reasons for which there is no result. */
  public static final Answers REASONS = Answers.of(Absence.class);

  /** The question why there is no result. */
  public static final String ABSENT = "absent";

  /** The question what was found. */
  public static final String VALUE = Part.VALUE;

  private static final int LONGEST = 500;

  private Form() {}

  /** Returns the name of what is asked of a finding at a site. */
  public static String name(Finding<?> finding, Site site) {
    return finding.id() + "/" + site.word();
  }

  /** Returns the name of a question about a finding at a site. */
  public static String name(Finding<?> finding, Site site, FormItem question) {
    return name(finding, site) + "/" + question.key();
  }

  /** Returns the questions about a finding, the same for every site; the first is why not. */
  public static List<FormItem> questions(Finding<?> finding) {
    Layout<?> layout = finding.layout();
    List<FormItem> questions = new ArrayList<>();
    questions.add(FormItem.of(ABSENT, "Why there is no result", new Spec.Coded(REASONS)));
    if (layout.choice().isPresent()) {
      questions.add(new FormItem(VALUE, finding.title(), Optional.empty(), false, Set.of()));
    } else {
      layout
          .variants()
          .get(0)
          .value()
          .ifPresent(spec -> questions.add(FormItem.of(VALUE, finding.title(), spec)));
    }
    layout.commonParts().forEach(part -> add(layout, part, questions));
    finding
        .methods()
        .ifPresent(list -> questions.add(FormItem.of("method", "Method", new Spec.Coded(list))));
    questions.add(FormItem.of("device", "Device", new Spec.Text(LONGEST)));
    questions.add(
        new FormItem("remarks", "Remarks", Optional.of(new Spec.Text(LONGEST)), true, Set.of()));
    return questions;
  }

  private static void add(Layout<?> layout, Part<?, ?> part, List<FormItem> questions) {
    String title = part.code().display();
    Set<? extends Concept> onlyWith = onlyWith(layout, part.key());
    questions.add(new FormItem(part.key(), title, Optional.of(part.spec()), false, onlyWith));
    if (part.mayBeAbsent()) {
      questions.add(
          FormItem.of(part.key() + "." + ABSENT, title + ": why not", new Spec.Coded(REASONS)));
    }
  }

  private static Set<? extends Concept> onlyWith(Layout<?> layout, String part) {
    return layout.rules().stream()
        .filter(Rule.OnlyWith.class::isInstance)
        .map(Rule.OnlyWith.class::cast)
        .filter(rule -> rule.part().equals(part))
        .findFirst()
        .<Set<? extends Concept>>map(Rule.OnlyWith::values)
        .orElse(Set.of());
  }
}
