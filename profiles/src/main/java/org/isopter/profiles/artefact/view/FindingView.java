package org.isopter.profiles.artefact.view;

import java.util.List;
import org.isopter.model.finding.Choice;
import org.isopter.model.finding.Finding;
import org.isopter.model.finding.Part;
import org.isopter.model.finding.Spec;
import org.isopter.model.finding.Variant;
import org.isopter.model.value.Concept;
import org.isopter.model.wire.BaseElements;
import org.isopter.model.wire.ElementPath;
import org.isopter.model.wire.FhirPath;
import org.isopter.model.wire.ObservationMember;
import org.isopter.model.wire.Parts;
import org.isopter.model.wire.Tests;
import org.isopter.model.wire.ValueType;

/**
 * Makes the columns of the view of one finding: a row for each fact.
 *
 * <p>The paths keep to what every engine of the standard has, and read the same in R4 and R5.
 */
final class FindingView {

  private static final String VALUE = Part.VALUE;

  /** The members in the order of the columns: first whose it is, then what was seen, then how. */
  static final List<ObservationMember> ORDER =
      List.of(
          ObservationMember.SUBJECT,
          ObservationMember.IDENTIFIER,
          ObservationMember.EFFECTIVE,
          ObservationMember.STATUS,
          ObservationMember.CODE,
          ObservationMember.BODY_SITE,
          ObservationMember.VALUE,
          ObservationMember.ABSENT_REASON,
          ObservationMember.COMPONENT,
          ObservationMember.METHOD,
          ObservationMember.DEVICE);

  private final Finding<?> finding;
  private final ViewColumns columns = new ViewColumns();

  private FindingView(Finding<?> finding) {
    this.finding = finding;
  }

  /** Returns the condition that an observation is of the finding. */
  static String where(Finding<?> finding) {
    return FhirPath.of(
        Tests.codedAs(ElementPath.of(ObservationMember.CODE.label()), finding.codes().general()));
  }

  static List<ViewColumn> columns(Finding<?> finding) {
    return new FindingView(finding).all();
  }

  private List<ViewColumn> all() {
    columns.add("observation_key", "string", "getResourceKey()", "Key of the observation");
    ORDER.forEach(member -> adding(member).run());
    return columns.list();
  }

  /** Returns what adds the columns of a member. */
  private Runnable adding(ObservationMember member) {
    String path = member.path();
    return switch (member) {
      case SUBJECT -> () -> subject(path);
      case IDENTIFIER -> () -> identifier(path);
      case EFFECTIVE ->
          () ->
              columns.add(
                  "time",
                  BaseElements.TIME,
                  path + ".ofType(" + BaseElements.TIME + ")",
                  "When it was seen");
      case STATUS -> () -> columns.add("status", "code", path, "How far the record has come");
      case CODE -> () -> code(path + ".coding.first()");
      case BODY_SITE ->
          () -> columns.coding("eye", path + ".coding", "Which eye, or both together");
      case VALUE -> () -> finding.layout().choice().ifPresentOrElse(this::choice, this::value);
      case ABSENT_REASON -> () -> absent("absent", "", "Why there is no value");
      case COMPONENT -> () -> Parts.of(finding.layout()).values().forEach(this::part);
      case METHOD -> () -> method(path);
      case DEVICE ->
          () -> columns.add("device", "string", path + ".display", "Instrument as written");
      // The same in every row, about the examiner, or in free words.
      case CATEGORY, PERFORMER, NOTE -> () -> {};
      case MODIFIER_EXTENSION, FOCUS, SPECIMEN, HAS_MEMBER -> () -> {};
    };
  }

  private void subject(String path) {
    String person = path + ".identifier";
    columns
        .add(
            "subject_key",
            "string",
            path + ".getReferenceKey(Patient)",
            "Key of the person; none while the person is named by an identifier only")
        .add(
            "subject_system",
            "string",
            ViewColumns.text(person + ".system"),
            "System of the person's identifier")
        .add("subject", "string", person + ".value", "Identifier of the person");
  }

  private void identifier(String path) {
    columns
        .add(
            "identifier_system",
            "string",
            ViewColumns.text(path + ".first().system"),
            "System of the identifier of the examination")
        .add(
            "identifier",
            "string",
            path + ".first().value",
            "Identifier of the examination, a slash, and the name of the fact within it");
  }

  private void code(String first) {
    columns
        .add("code", "code", first + ".code", "Most specific code of the finding")
        .add("code_system", "string", ViewColumns.text(first + ".system"), "System of that code");
  }

  private void method(String path) {
    if (finding.methods().isPresent()) {
      columns.coding("method", path + ".coding", "Technique");
    }
  }

  private void value() {
    for (Variant variant : finding.layout().variants()) {
      variant.value().ifPresent(spec -> value(spec, VALUE, "", finding.title()));
    }
  }

  /** Adds a value for each notation: a number of one must not be read as a number of another. */
  private void choice(Choice<?, ?> choice) {
    ElementPath notation = Tests.component(choice.code());
    String coding =
        FhirPath.of(notation) + ".value.ofType(" + ValueType.CONCEPT.type() + ").coding";
    columns.coding(name(choice.key()), coding, choice.code().display());
    for (Variant variant : finding.layout().variants()) {
      Concept one = variant.notation().orElseThrow();
      ElementPath only = ElementPath.THIS.where(Tests.valueIn(notation, List.of(one.code())));
      variant
          .value()
          .ifPresent(
              spec ->
                  value(
                      spec,
                      VALUE + "_" + name(one.word()),
                      FhirPath.of(only) + ".",
                      finding.title() + ", " + one.code().display()));
    }
  }

  private void part(Part<?, ?> part) {
    String component = FhirPath.of(Tests.component(part.code())) + ".";
    String name = name(part.key());
    value(part.spec(), name, component, part.code().display());
    if (part.mayBeAbsent()) {
      absent(name + "_absent", component, part.code().display() + ": why there is no value");
    }
  }

  private void absent(String name, String holder, String meaning) {
    columns.add(name, "code", holder + "dataAbsentReason.coding.code", meaning);
  }

  private void value(Spec spec, String name, String holder, String meaning) {
    spec.fold(new ViewValue(columns, name, holder, meaning));
  }

  private static String name(String key) {
    return key.replace('-', '_');
  }
}
