package org.isopter.profiles.artefact;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.stream.Stream;
import org.hl7.fhir.r4.model.ValueSet;
import org.hl7.fhir.r4.model.ValueSet.ConceptSetComponent;
import org.isopter.model.catalogue.Catalogue;
import org.isopter.model.exam.Status;
import org.isopter.model.finding.Answers;
import org.isopter.model.finding.Finding;
import org.isopter.model.finding.Spec;
import org.isopter.model.value.Absence;
import org.isopter.model.value.Canonical;
import org.isopter.model.value.Code;
import org.isopter.model.value.Concept;
import org.isopter.model.value.Site;

/** Makes the value sets: one per list of answers, and those that every finding shares. */
final class ValueSets {

  static final String EYE_SITE = "eye-site";
  static final String ABSENT_REASON = "absent-reason";
  static final String STATUS = "record-status";

  private ValueSets() {}

  static List<ValueSet> of(Catalogue catalogue, AnswerLists lists) {
    List<ValueSet> sets = new ArrayList<>();
    sets.add(listed(EYE_SITE, "Right eye, left eye, both eyes", codes(List.of(Site.values()))));
    sets.add(listed(ABSENT_REASON, "Why a finding has no value", codes(List.of(Absence.values()))));
    sets.add(listed(STATUS, "How far a record has come", statuses()));
    lists
        .all()
        .forEach(
            answers ->
                sets.add(listed(answers.id(), title(lists, answers), codes(answers.concepts()))));
    catalogue.all().stream().flatMap(ValueSets::united).forEach(sets::add);
    return sets;
  }

  /** Returns the id of the value set of the coded values of a finding with several notations. */
  static String ofValue(Finding<?> finding) {
    List<Answers> lists = codedValues(finding);
    return lists.size() == 1 ? lists.get(0).id() : finding.id() + "-value";
  }

  private static Stream<ValueSet> united(Finding<?> finding) {
    List<Answers> lists = codedValues(finding);
    if (lists.size() < 2) {
      return Stream.empty();
    }
    List<Code> codes = lists.stream().flatMap(a -> codes(a.concepts()).stream()).toList();
    return Stream.of(listed(ofValue(finding), finding.title() + ", values in words", codes));
  }

  private static List<Answers> codedValues(Finding<?> finding) {
    return finding.layout().variants().stream()
        .flatMap(variant -> variant.value().stream())
        .filter(Spec.Coded.class::isInstance)
        .map(spec -> ((Spec.Coded) spec).answers())
        .distinct()
        .toList();
  }

  private static ValueSet listed(String id, String title, List<Code> codes) {
    ValueSet set = Metadata.fill(new ValueSet(), id, Canonical.valueSet(id), title);
    set.setDescription(title + ".");
    set.setImmutable(false);
    String notices = Metadata.notices(codes);
    set.setCopyright(notices.isEmpty() ? null : notices);
    Map<String, ConceptSetComponent> includes = new LinkedHashMap<>();
    for (Code code : codes) {
      includes
          .computeIfAbsent(code.system(), s -> set.getCompose().addInclude().setSystem(s))
          .addConcept()
          .setCode(code.code())
          .setDisplay(code.display());
    }
    return set;
  }

  private static String title(AnswerLists lists, Answers answers) {
    return "Answers to " + String.join("; ", lists.uses(answers));
  }

  private static List<Code> statuses() {
    return Stream.of(Status.values())
        .map(s -> new Code("http://hl7.org/fhir/observation-status", s.word(), display(s)))
        .toList();
  }

  private static String display(Status status) {
    String words = status.word().replace('-', ' ');
    return status == Status.ENTERED_IN_ERROR
        ? "Entered in Error"
        : words.substring(0, 1).toUpperCase(java.util.Locale.ROOT) + words.substring(1);
  }

  private static List<Code> codes(List<? extends Concept> concepts) {
    return concepts.stream().<Code>map(Concept::code).toList();
  }
}
