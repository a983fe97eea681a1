package org.isopter.profiles.artefact;

import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import org.hl7.fhir.r4.model.BooleanType;
import org.hl7.fhir.r4.model.Coding;
import org.hl7.fhir.r4.model.Questionnaire;
import org.hl7.fhir.r4.model.Questionnaire.EnableWhenBehavior;
import org.hl7.fhir.r4.model.Questionnaire.QuestionnaireItemComponent;
import org.hl7.fhir.r4.model.Questionnaire.QuestionnaireItemOperator;
import org.hl7.fhir.r4.model.Questionnaire.QuestionnaireItemType;
import org.isopter.model.catalogue.Catalogue;
import org.isopter.model.exam.ExamCodes;
import org.isopter.model.finding.Answers;
import org.isopter.model.finding.Finding;
import org.isopter.model.finding.Spec;
import org.isopter.model.form.Form;
import org.isopter.model.form.FormItem;
import org.isopter.model.text.PlainWords;
import org.isopter.model.value.Code;
import org.isopter.model.value.Concept;
import org.isopter.model.value.Site;

/**
 * Makes the form of an examination: every question of every finding, a number being a text, so that
 * no renderer drops a digit.
 */
final class FormQuestionnaire {

  private FormQuestionnaire() {}

  static Questionnaire of(Catalogue catalogue) {
    Questionnaire form =
        Metadata.fill(new Questionnaire(), "examination", Form.URL, ExamCodes.PANEL.display());
    form.setDescription(
        "All findings of the bedside examination of the eye. A number is a text, so that its digits"
            + " stay as written; what is left empty is not recorded and is never taken for normal."
            + " For record-keeping: no diagnosis, no triage.");
    form.addSubjectType("Patient");
    List<Code> codes =
        catalogue.all().stream()
            .flatMap(finding -> Form.questions(finding).stream())
            .flatMap(question -> answers(question).stream())
            .flatMap(answers -> answers.concepts().stream())
            .map(Concept::code)
            .toList();
    form.setCopyright(Metadata.notices(codes));
    catalogue.all().forEach(finding -> form.addItem(finding(finding)));
    return form;
  }

  private static QuestionnaireItemComponent finding(Finding<?> finding) {
    QuestionnaireItemComponent item = group(finding.id(), finding.title());
    finding.sites().forEach(site -> item.addItem(site(finding, site)));
    return item;
  }

  private static QuestionnaireItemComponent group(String name, String text) {
    return new QuestionnaireItemComponent()
        .setLinkId(name)
        .setText(text)
        .setType(QuestionnaireItemType.GROUP);
  }

  private static QuestionnaireItemComponent site(Finding<?> finding, Site site) {
    String words =
        site == Site.BOTH ? "Both eyes together" : PlainWords.capital(site.word()) + " eye";
    QuestionnaireItemComponent item = group(Form.name(finding, site), words).setRepeats(true);
    Form.questions(finding).forEach(question -> item.addItem(question(finding, site, question)));
    return item;
  }

  private static QuestionnaireItemComponent question(
      Finding<?> finding, Site site, FormItem question) {
    QuestionnaireItemComponent item =
        new QuestionnaireItemComponent()
            .setLinkId(Form.name(finding, site, question))
            .setText(question.text());
    item.setType(QuestionnaireItemType.STRING);
    if (question.spec().orElse(null) instanceof Spec.Truth) {
      item.setType(QuestionnaireItemType.BOOLEAN);
    }
    answers(question).ifPresent(answers -> choice(item, answers));
    if (question.repeats()) {
      item.setRepeats(true);
    }
    String name = Form.name(finding, site);
    if (!question.onlyWith().isEmpty()) {
      question.onlyWith().stream()
          .sorted(Comparator.comparing(Concept::word))
          .forEach(value -> beside(item, name, value));
    } else if (isOfResult(question)) {
      item.addEnableWhen()
          .setQuestion(name + "/" + Form.ABSENT)
          .setOperator(QuestionnaireItemOperator.EXISTS)
          .setAnswer(new BooleanType(false));
    }
    return item;
  }

  /** Says whether it is asked only where there is a result. */
  private static boolean isOfResult(FormItem question) {
    return !List.of(Form.ABSENT, "method", "device", "remarks").contains(question.key());
  }

  private static void beside(QuestionnaireItemComponent item, String name, Concept value) {
    item.addEnableWhen()
        .setQuestion(name + "/" + Form.VALUE)
        .setOperator(QuestionnaireItemOperator.EQUAL)
        .setAnswer(coding(value.code()));
    if (item.getEnableWhen().size() > 1) {
      item.setEnableBehavior(EnableWhenBehavior.ANY);
    }
  }

  private static void choice(QuestionnaireItemComponent item, Answers answers) {
    item.setType(QuestionnaireItemType.CHOICE);
    answers.concepts().forEach(one -> item.addAnswerOption().setValue(coding(one.code())));
  }

  private static Optional<Answers> answers(FormItem question) {
    return question
        .spec()
        .filter(Spec.Coded.class::isInstance)
        .map(spec -> ((Spec.Coded) spec).answers());
  }

  private static Coding coding(Code code) {
    return new Coding(code.system(), code.code(), code.display());
  }
}
