package org.isopter.profiles.artefact;

import java.util.Collection;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import org.isopter.model.catalogue.Catalogue;
import org.isopter.model.exam.Demographics;
import org.isopter.model.exam.ExamCodes;
import org.isopter.model.finding.Answers;
import org.isopter.model.finding.Choice;
import org.isopter.model.finding.Finding;
import org.isopter.model.finding.Part;
import org.isopter.model.finding.Spec;
import org.isopter.model.finding.Variant;
import org.isopter.model.wire.ExaminationElements;

/** Every list of answers that a catalogue uses, and what it is used for. */
final class AnswerLists {

  private final Map<String, Answers> byId = new LinkedHashMap<>();
  private final Map<String, Set<String>> uses = new LinkedHashMap<>();

  AnswerLists(Catalogue catalogue) {
    catalogue.all().forEach(this::add);
    use(ExaminationElements.SETTINGS, ExamCodes.SETTING.display());
    Demographics.LAYOUT.commonParts().forEach(part -> use(part.spec(), part.code().display()));
  }

  /** Returns the lists in the order in which they are first used. */
  Collection<Answers> all() {
    return byId.values();
  }

  /** Returns what a list is used for: titles of findings and of their parts. */
  List<String> uses(Answers answers) {
    return List.copyOf(uses.getOrDefault(answers.id(), Set.of()));
  }

  private void add(Finding<?> finding) {
    for (Variant variant : finding.layout().variants()) {
      variant.value().ifPresent(spec -> use(spec, finding.title()));
      for (Part<?, ?> part : variant.parts()) {
        use(part.spec(), finding.title() + ": " + part.key());
      }
    }
    finding.methods().ifPresent(methods -> use(methods, finding.title() + ": method"));
    finding
        .layout()
        .choice()
        .map(Choice::notations)
        .ifPresent(n -> use(n, finding.title() + ": notation"));
  }

  private void use(Spec spec, String what) {
    if (spec instanceof Spec.Coded coded) {
      use(coded.answers(), what);
    }
  }

  private void use(Answers answers, String what) {
    Answers known = byId.putIfAbsent(answers.id(), answers);
    if (known != null && !known.equals(answers)) {
      throw new IllegalArgumentException("two lists of answers are called " + answers.id());
    }
    uses.computeIfAbsent(answers.id(), any -> new LinkedHashSet<>()).add(what);
  }
}
