package org.isopter.mapper.fhir;

import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.Function;
import org.isopter.model.derive.Derivations;
import org.isopter.model.derive.Derived;
import org.isopter.model.exam.Exam;
import org.isopter.model.exam.ExamCodes;
import org.isopter.model.exam.FactKey;
import org.isopter.model.value.Quantity;

/**
 * Checks derived statements against the facts that they stand beside. They are never taken as they
 * are: each is computed again, and one that says something else is refused.
 */
final class DerivedReader {

  private final Exam exam;
  private final Ids ids;
  private final Map<Cursor, FactKey> facts;
  private final Function<Cursor, Optional<Cursor>> resolve;
  private final Map<String, Derived> wanted = new HashMap<>();

  /**
   * Makes a reader.
   *
   * @param facts the observations of the facts, with the facts' names
   * @param resolve leads from a reference to the observation, or reports that it leads nowhere
   */
  DerivedReader(Exam exam, Map<Cursor, FactKey> facts, Function<Cursor, Optional<Cursor>> resolve) {
    this.exam = exam;
    this.ids = Ids.of(exam.header().id());
    this.facts = facts;
    this.resolve = resolve;
    List<Derived> all = Derivations.of(exam);
    List<String> names = Derived.names(all);
    for (int i = 0; i < all.size(); i++) {
      wanted.put(ids.derived(names.get(i)), all.get(i));
    }
  }

  /** Takes the statement if the facts give it, and reports where it differs. */
  void check(Cursor observation) {
    Transport.resource(observation);
    Optional<Cursor> identifier = observation.only("identifier");
    identifier.ifPresent(
        found -> {
          found.expect("system", ids.system());
          String name = found.text("value").orElse("");
          // Each statement stands once: a second one of the name finds nothing.
          Optional.ofNullable(wanted.remove(name))
              .ifPresentOrElse(
                  derived -> check(observation, derived), () -> unknown(observation, found, name));
        });
    if (identifier.isEmpty()) {
      observation.abandon();
    }
  }

  private static void unknown(Cursor observation, Cursor identifier, String name) {
    identifier.fault(
        "value", "\"" + name + "\"", "the name of a statement that the facts give, once");
    observation.abandon();
  }

  private void check(Cursor observation, Derived derived) {
    observation.expect("status", exam.header().status().word());
    observation
        .only("category")
        .ifPresent(category -> Codings.expectAll(category, List.of(FrameCodes.CATEGORY)));
    observation
        .required("code")
        .ifPresent(
            code -> {
              Codings.expectAll(code, List.of(ExamCodes.DERIVED));
              code.expect("text", DerivedText.title(derived));
            });
    People.expectPeople(observation, exam.header());
    observation.expect("effectiveDateTime", Frame.time(exam.header().performed()));
    derived
        .value()
        .ifPresentOrElse(
            number -> number(observation, number),
            () -> observation.expect("valueString", derived.statement().text()));
    expectTexts(observation, DerivedText.notes(derived));
    Codings.expect(observation, "bodySite", derived.site().code());
    observation
        .required("method")
        .ifPresent(method -> method.expect("text", DerivedText.method(derived)));
    // Which version derived it is told, and does not change what follows from the facts.
    observation.required("device").ifPresent(device -> device.drop("display"));
    from(observation, derived);
  }

  private static void number(Cursor observation, Quantity wanted) {
    observation
        .required("valueQuantity")
        .ifPresent(
            quantity -> {
              String seen = quantity.number("value").map(Object::toString).orElse("nothing");
              String digits = wanted.value().toString();
              if (!seen.equals(digits)) {
                quantity.fault("value", seen, digits + ", which the facts give");
              }
              quantity.expect("unit", wanted.unit().label());
              quantity.expect("system", org.isopter.model.value.Code.UCUM);
              quantity.expect("code", wanted.unit().ucum());
            });
  }

  private static void expectTexts(Cursor observation, List<String> wanted) {
    List<Cursor> notes = observation.objects("note");
    for (int i = 0; i < Math.min(notes.size(), wanted.size()); i++) {
      notes.get(i).expect("text", wanted.get(i));
    }
    if (notes.size() != wanted.size()) {
      observation.fault("note", notes.size() + " of them", String.valueOf(wanted.size()));
    }
  }

  private void from(Cursor observation, Derived derived) {
    List<FactKey> seen =
        observation.objects("derivedFrom").stream()
            .map(resolve)
            .flatMap(Optional::stream)
            .map(fact -> Optional.ofNullable(facts.get(fact)).orElse(new FactKey("no finding")))
            .toList();
    if (!seen.equals(derived.from())) {
      observation.fault("derivedFrom", seen.toString(), derived.from().toString());
    }
  }
}
