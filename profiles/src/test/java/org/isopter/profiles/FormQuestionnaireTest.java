package org.isopter.profiles;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Set;
import java.util.TreeSet;
import org.hl7.fhir.r4.model.Coding;
import org.hl7.fhir.r4.model.Questionnaire;
import org.hl7.fhir.r4.model.Questionnaire.QuestionnaireItemComponent;
import org.hl7.fhir.r4.model.Questionnaire.QuestionnaireItemType;
import org.isopter.model.catalogue.Catalogue;
import org.isopter.model.finding.Finding;
import org.isopter.model.form.Form;
import org.isopter.model.form.FormItem;
import org.isopter.model.value.Site;
import org.isopter.profiles.artefact.Artefacts;
import org.junit.jupiter.api.Test;

/** The form of an examination (FHIR R4, Questionnaire). */
final class FormQuestionnaireTest {

  private static final Questionnaire FORM =
      Artefacts.of(Catalogue.standard()).resources().stream()
          .filter(Questionnaire.class::isInstance)
          .map(Questionnaire.class::cast)
          .findFirst()
          .orElseThrow();

  private static Map<String, QuestionnaireItemComponent> items() {
    Map<String, QuestionnaireItemComponent> items = new LinkedHashMap<>();
    List<QuestionnaireItemComponent> open = new ArrayList<>(FORM.getItem());
    while (!open.isEmpty()) {
      QuestionnaireItemComponent item = open.remove(0);
      // The names are unique: invariant que-2.
      assertFalse(items.containsKey(item.getLinkId()), item.getLinkId());
      items.put(item.getLinkId(), item);
      open.addAll(item.getItem());
    }
    return items;
  }

  @Test
  void asksEveryQuestionOfEveryFindingAtEverySite() {
    Set<String> wanted = new TreeSet<>();
    for (Finding<?> finding : Catalogue.standard().all()) {
      for (Site site : finding.sites()) {
        for (FormItem question : Form.questions(finding)) {
          wanted.add(Form.name(finding, site, question));
        }
      }
    }
    Set<String> asked = new TreeSet<>(items().keySet());
    asked.removeIf(name -> name.split("/", -1).length < 3);
    assertEquals(wanted, asked);
    assertEquals(Form.URL, FORM.getUrl());
  }

  @Test
  void asksForNumbersAsTexts() {
    Set<QuestionnaireItemType> kinds = new TreeSet<>();
    items().values().forEach(item -> kinds.add(item.getType()));
    assertEquals(
        Set.of(
            QuestionnaireItemType.GROUP,
            QuestionnaireItemType.STRING,
            QuestionnaireItemType.CHOICE,
            QuestionnaireItemType.BOOLEAN),
        kinds);
    assertTrue(
        Objects.requireNonNull(items().get("intraocular-pressure/left/value"))
            .getText()
            .endsWith("mmHg)"));
  }

  @Test
  void asksOnlyBesideAnswersThatCanBeGiven() {
    Map<String, QuestionnaireItemComponent> items = items();
    int conditions = 0;
    for (QuestionnaireItemComponent item : items.values()) {
      for (var when : item.getEnableWhen()) {
        QuestionnaireItemComponent other =
            Objects.requireNonNull(items.get(when.getQuestion()), when.getQuestion());
        if (when.getAnswer() instanceof Coding coding) {
          assertTrue(
              other.getAnswerOption().stream()
                  .anyMatch(option -> option.getValueCoding().equalsDeep(coding)),
              item.getLinkId());
        }
        conditions++;
      }
    }
    assertTrue(conditions > 100, "only " + conditions);
  }
}
