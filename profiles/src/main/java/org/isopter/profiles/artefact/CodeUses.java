package org.isopter.profiles.artefact;

import java.util.ArrayList;
import java.util.Collection;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.stream.Collectors;
import org.isopter.model.catalogue.Catalogue;
import org.isopter.model.exam.Demographics;
import org.isopter.model.exam.ExamCodes;
import org.isopter.model.finding.Answers;
import org.isopter.model.finding.Choice;
import org.isopter.model.finding.Finding;
import org.isopter.model.value.Absence;
import org.isopter.model.value.Code;
import org.isopter.model.value.Site;
import org.isopter.model.wire.Parts;

/** Every code that records of a catalogue travel under, and what each is used for. */
final class CodeUses {

  private final Searched searched = Searched.read();
  private final Map<String, Code> codes = new LinkedHashMap<>();
  private final Map<String, List<String>> definitions = new LinkedHashMap<>();

  CodeUses(Catalogue catalogue, AnswerLists lists) {
    use(ExamCodes.REPORT, "");
    use(ExamCodes.PANEL, "One eye examination, with its findings as members.");
    use(ExamCodes.SETTING, "Where the examination took place.");
    Demographics.LAYOUT
        .commonParts()
        .forEach(part -> use(part.code(), "What is known of the person."));
    use(ExamCodes.DERIVED, "A statement that follows from findings; it was not seen.");
    catalogue.all().forEach(this::add);
    lists.all().forEach(answers -> add(answers, lists));
    List.of(Site.values()).forEach(site -> use(site.code(), ""));
    List.of(Absence.values()).forEach(this::add);
  }

  /** Returns the codes in the order of the catalogue. */
  Collection<Code> codes() {
    return codes.values();
  }

  /** Returns what a code of ours means. */
  String definition(Code code) {
    return code.display()
        + ". "
        + String.join(" ", definitions.getOrDefault(code.token(), List.of()));
  }

  /** Returns what published code was looked for in the place of ours; may be empty. */
  String searched(Code code) {
    return searched.note(code);
  }

  private void add(Finding<?> finding) {
    String sites =
        finding.sites().stream()
            .map(Site::word)
            .collect(Collectors.joining(", ", "Recorded of: ", "."));
    finding.codes().all().forEach(code -> use(code, (sites + " " + finding.note()).strip()));
    String partOf = "Part of the finding " + finding.id() + ".";
    finding.layout().choice().map(Choice::code).ifPresent(code -> use(code, partOf));
    Parts.of(finding.layout()).values().forEach(part -> use(part.code(), partOf));
  }

  private void add(Answers answers, AnswerLists lists) {
    String use = "An answer to: " + String.join("; ", lists.uses(answers)) + ".";
    answers.concepts().forEach(concept -> use(concept.code(), use));
  }

  private void add(Absence absence) {
    use(absence.code(), "A reason why a finding has no value.");
  }

  private void use(Code code, String definition) {
    Code known = codes.putIfAbsent(code.token(), code);
    if (known != null && !known.display().equals(code.display())) {
      throw new IllegalArgumentException(
          code.token() + " is displayed as " + known.display() + " and as " + code.display());
    }
    List<String> all = definitions.computeIfAbsent(code.token(), any -> new ArrayList<>());
    if (!definition.isEmpty() && !all.contains(definition)) {
      all.add(definition);
    }
  }
}
