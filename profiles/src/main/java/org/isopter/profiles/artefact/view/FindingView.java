package org.isopter.profiles.artefact.view;

import java.util.List;
import org.isopter.model.finding.Choice;
import org.isopter.model.finding.Finding;
import org.isopter.model.finding.Part;
import org.isopter.model.finding.Spec;
import org.isopter.model.finding.Variant;
import org.isopter.model.value.Concept;
import org.isopter.model.wire.ElementPath;
import org.isopter.model.wire.FhirPath;
import org.isopter.model.wire.Parts;
import org.isopter.model.wire.Tests;

/**
 * Makes the columns of the view of one finding: a row for each fact.
 *
 * <p>The paths keep to what every engine of the standard has, and read the same in R4 and R5.
 */
final class FindingView {

  private static final String VALUE = Part.VALUE;

  private final Finding<?> finding;
  private final ViewColumns columns = new ViewColumns();

  private FindingView(Finding<?> finding) {
    this.finding = finding;
  }

  /** Returns the condition that an observation is of the finding. */
  static String where(Finding<?> finding) {
    return FhirPath.of(Tests.codedAs(ElementPath.of("code"), finding.codes().general()));
  }

  static List<ViewColumn> columns(Finding<?> finding) {
    return new FindingView(finding).all();
  }

  private List<ViewColumn> all() {
    keys();
    what();
    finding.layout().choice().ifPresentOrElse(this::choice, this::value);
    absent("absent", "", "Why there is no value");
    Parts.of(finding.layout()).values().forEach(this::part);
    if (finding.methods().isPresent()) {
      columns.coding("method", "method.coding", "Technique");
    }
    columns.add("device", "string", "device.display", "Instrument as written");
    return columns.list();
  }

  private void keys() {
    String person = "subject.identifier";
    columns
        .add("observation_key", "string", "getResourceKey()", "Key of the observation")
        .add(
            "subject_key",
            "string",
            "subject.getReferenceKey(Patient)",
            "Key of the person; none while the person is named by an identifier only")
        .add(
            "subject_system",
            "string",
            ViewColumns.text(person + ".system"),
            "System of the person's identifier")
        .add("subject", "string", person + ".value", "Identifier of the person")
        .add(
            "identifier_system",
            "string",
            ViewColumns.text("identifier.first().system"),
            "System of the identifier of the examination")
        .add(
            "identifier",
            "string",
            "identifier.first().value",
            "Identifier of the examination, a slash, and the name of the fact within it");
  }

  private void what() {
    columns
        .add("time", "dateTime", "effective.ofType(dateTime)", "When it was seen")
        .add("status", "code", "status", "How far the record has come")
        .add("code", "code", "code.coding.first().code", "Most specific code of the finding")
        .add(
            "code_system",
            "string",
            ViewColumns.text("code.coding.first().system"),
            "System of that code")
        .coding("eye", "bodySite.coding", "Which eye, or both together");
  }

  private void value() {
    for (Variant variant : finding.layout().variants()) {
      variant.value().ifPresent(spec -> value(spec, VALUE, "", finding.title()));
    }
  }

  /** Adds a value for each notation: a number of one must not be read as a number of another. */
  private void choice(Choice<?, ?> choice) {
    ElementPath notation = Tests.component(choice.code());
    String coding = FhirPath.of(notation) + ".value.ofType(CodeableConcept).coding";
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
