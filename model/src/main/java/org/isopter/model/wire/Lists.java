package org.isopter.model.wire;

import java.util.List;
import java.util.Locale;
import java.util.stream.Stream;
import org.isopter.model.exam.Status;
import org.isopter.model.finding.Answers;
import org.isopter.model.finding.Finding;
import org.isopter.model.finding.Spec;
import org.isopter.model.value.Absence;
import org.isopter.model.value.Code;
import org.isopter.model.value.Concept;
import org.isopter.model.value.Site;

/** The value sets that elements are bound to. */
public final class Lists {

  /** Right eye, left eye, both eyes. */
  public static final Condition.Bound EYE_SITE =
      Condition.Bound.required("eye-site", codes(List.of(Site.values())));

  /** Why a finding has no value. */
  public static final Condition.Bound ABSENT_REASON =
      Condition.Bound.required("absent-reason", codes(List.of(Absence.values())));

  /** How far a record has come. */
  public static final Condition.Bound STATUS =
      Condition.Bound.required(
          "record-status", Stream.of(Status.values()).map(Lists::ofStatus).toList());

  private Lists() {}

  /** Returns the value set of a list of answers. */
  public static Condition.Bound of(Answers answers) {
    return Condition.Bound.required(answers.id(), codes(answers.concepts()));
  }

  /**
   * Returns the value set of the coded values of a finding with several notations: that of its only
   * list, or one that unites its lists.
   */
  public static Condition.Bound ofValue(Finding<?> finding) {
    List<Answers> lists = codedValues(finding);
    List<Code> codes = lists.stream().flatMap(list -> codes(list.concepts()).stream()).toList();
    return Condition.Bound.required(
        lists.size() == 1 ? lists.get(0).id() : finding.id() + "-value", codes);
  }

  /** Says whether the coded values of a finding come from several lists. */
  public static boolean isUnited(Finding<?> finding) {
    return codedValues(finding).size() > 1;
  }

  private static List<Answers> codedValues(Finding<?> finding) {
    return finding.layout().variants().stream()
        .flatMap(variant -> variant.value().stream())
        .filter(Spec.Coded.class::isInstance)
        .map(spec -> ((Spec.Coded) spec).answers())
        .distinct()
        .toList();
  }

  private static Code ofStatus(Status status) {
    return new Code("http://hl7.org/fhir/observation-status", status.word(), display(status));
  }

  private static String display(Status status) {
    String words = status.word().replace('-', ' ');
    return status == Status.ENTERED_IN_ERROR
        ? "Entered in Error"
        : words.substring(0, 1).toUpperCase(Locale.ROOT) + words.substring(1);
  }

  private static List<Code> codes(List<? extends Concept> concepts) {
    return concepts.stream().<Code>map(Concept::code).toList();
  }
}
