package org.isopter.profiles.artefact;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.stream.Stream;
import org.hl7.fhir.r4.model.ValueSet;
import org.hl7.fhir.r4.model.ValueSet.ConceptSetComponent;
import org.isopter.model.catalogue.Catalogue;
import org.isopter.model.finding.Answers;
import org.isopter.model.finding.Finding;
import org.isopter.model.value.Canonical;
import org.isopter.model.value.Code;
import org.isopter.model.wire.Condition;
import org.isopter.model.wire.Lists;

/** Makes the value sets: one per list of answers, and those that every finding shares. */
final class ValueSets {

  private static final String PUBLISHED = "published-codes";

  private ValueSets() {}

  static List<ValueSet> of(Catalogue catalogue, AnswerLists lists, CodeUses uses) {
    List<ValueSet> sets = new ArrayList<>();
    sets.add(listed(Lists.EYE_SITE, "Right eye, left eye, both eyes"));
    sets.add(listed(Lists.ABSENT_REASON, "Why a finding has no value"));
    sets.add(listed(Lists.STATUS, "How far a record has come"));
    List<Code> published = uses.codes().stream().filter(ValueSets::isQuoted).toList();
    sets.add(
        listed(
            new Condition.Bound(PUBLISHED, published, true), "LOINC and SNOMED CT as used here"));
    lists.all().forEach(answers -> sets.add(listed(Lists.of(answers), title(lists, answers))));
    catalogue.all().stream().flatMap(ValueSets::united).forEach(sets::add);
    return sets;
  }

  private static boolean isQuoted(Code code) {
    return code.system().equals(Code.LOINC) || code.system().equals(Code.SNOMED);
  }

  private static Stream<ValueSet> united(Finding<?> finding) {
    return Lists.isUnited(finding)
        ? Stream.of(listed(Lists.ofValue(finding), finding.title() + ", values in words"))
        : Stream.empty();
  }

  private static ValueSet listed(Condition.Bound list, String title) {
    String id = list.valueSet();
    List<Code> codes = list.codes();
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
}
