package org.isopter.mapper.fhir;

import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.Function;
import org.isopter.mapper.fhir.element.Codings;
import org.isopter.mapper.fhir.element.DatumReader;
import org.isopter.mapper.fhir.element.ElementCursor;
import org.isopter.mapper.fhir.element.Ids;
import org.isopter.mapper.fhir.element.People;
import org.isopter.mapper.fhir.element.Transport;
import org.isopter.model.derive.Derivations;
import org.isopter.model.derive.Derived;
import org.isopter.model.exam.Exam;
import org.isopter.model.exam.ExamCodes;
import org.isopter.model.exam.FactKey;
import org.isopter.model.value.Code;
import org.isopter.model.value.Quantity;

/**
 * Checks derived statements against the facts that they stand beside. They are never taken as they
 * are: each is computed again, and one of the same version of the rule set that differs in kind,
 * eye, number or facts is refused.
 */
final class DerivedReader {

  private final Exam exam;
  private final Ids ids;
  private final Map<ElementCursor, FactKey> facts;
  private final Function<ElementCursor, Optional<ElementCursor>> resolve;
  private final Map<String, Derived> wanted = new HashMap<>();

  /**
   * Makes a reader.
   *
   * @param facts the observations of the facts, with the facts' names
   * @param resolve leads from a reference to the observation, or reports that it leads nowhere
   */
  DerivedReader(
      Exam exam,
      Map<ElementCursor, FactKey> facts,
      Function<ElementCursor, Optional<ElementCursor>> resolve) {
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

  /**
   * Takes the statement if the facts give it, and reports where it differs. The texts are written
   * for people and may be worded otherwise. What another version of the rule set said is read over:
   * ours is worked out from the same facts.
   */
  void check(ElementCursor observation) {
    Transport.resource(observation);
    frame(observation);
    Optional<ElementCursor> identifier = observation.only("identifier");
    String name = identifier.flatMap(found -> name(found)).orElse("");
    if (identifier.isEmpty() || name.isEmpty()) {
      observation.abandon();
      return;
    }
    texts(observation);
    if (isOurs(observation)) {
      // Each statement stands once: a second one of the name finds nothing.
      Optional.ofNullable(wanted.remove(name))
          .ifPresentOrElse(
              derived -> check(observation, derived),
              () -> unknown(observation, identifier.get(), name));
    } else {
      from(observation);
      List.of("valueQuantity", "valueString", "bodySite").forEach(observation::drop);
    }
  }

  private Optional<String> name(ElementCursor identifier) {
    identifier.expect("system", ids.system());
    String name = identifier.text("value").orElse("");
    if (name.startsWith(ids.derived("")) && name.length() > ids.derived("").length()) {
      return Optional.of(name);
    }
    identifier.fault("value", "\"" + name + "\"", "\"" + ids.derived("") + "\", then kind and eye");
    return Optional.empty();
  }

  private static void unknown(ElementCursor observation, ElementCursor identifier, String name) {
    identifier.fault(
        "value", "\"" + name + "\"", "the name of a statement that the facts give, once");
    observation.abandon();
  }

  private void frame(ElementCursor observation) {
    observation.expect("status", exam.header().status().word());
    ObservationReader.category(observation);
    observation
        .required("code")
        .ifPresent(
            code -> {
              Codings.expectAll(code, List.of(ExamCodes.DERIVED));
              code.text("text");
            });
    People.expectPeople(observation, exam.header());
    observation.expect(Frame.EFFECTIVE, Frame.time(exam.header().performed()));
  }

  private static void texts(ElementCursor observation) {
    observation.objects("note").forEach(note -> note.text("text"));
    observation.object("method").ifPresent(method -> method.text("text"));
  }

  /** Says whether the statement is by the rule set that is asked here, and takes its name. */
  private static boolean isOurs(ElementCursor observation) {
    Optional<ElementCursor> device = observation.object("device");
    device.filter(by -> by.has("type")).ifPresent(by -> by.expect("type", "Device"));
    device.ifPresent(by -> by.text("display"));
    return device
        .flatMap(by -> by.object("identifier"))
        .filter(by -> isRuleSet(by.text("system").orElse(""), by.text("value").orElse("")))
        .isPresent();
  }

  private static boolean isRuleSet(String system, String version) {
    return system.equals(DerivedText.RULE_SET) && version.equals(Derivations.RULES);
  }

  private void check(ElementCursor observation, Derived derived) {
    derived
        .value()
        .ifPresentOrElse(
            number -> number(observation, number),
            () -> {
              observation.require("valueString");
              observation.text("valueString");
            });
    Codings.expect(observation, "bodySite", derived.site().code());
    List<FactKey> seen = from(observation);
    if (!seen.equals(derived.from())) {
      observation.fault("derivedFrom", seen.toString(), derived.from().toString());
    }
  }

  private static void number(ElementCursor observation, Quantity wanted) {
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
              quantity.expect("system", Code.UCUM);
              DatumReader.unitCode(quantity, wanted.unit());
            });
  }

  private List<FactKey> from(ElementCursor observation) {
    return observation.objects("derivedFrom").stream()
        .map(resolve)
        .flatMap(Optional::stream)
        .map(fact -> Optional.ofNullable(facts.get(fact)).orElse(new FactKey("no finding")))
        .toList();
  }
}
