package org.isopter.profiles.compiled;

import java.util.List;
import java.util.Optional;
import java.util.function.Predicate;
import org.isopter.model.wire.Condition;
import org.isopter.model.wire.Element;

/** The compiled form of an element: what each occurrence keeps, and how many there may be. */
final class ElementCheck {

  private final Element element;
  private final String id;
  private final Predicate<Item> typed;
  private final List<Check> types;
  private final List<Check> conditions;
  private final List<ElementCheck> children;
  private final Optional<SliceCheck> slices;

  /**
   * Compiles an element.
   *
   * @param id the id of its definition, for instance {@code Observation.component:chart.code}
   */
  ElementCheck(Element element, String id) {
    this.element = element;
    this.id = id;
    this.typed = typed(element);
    this.types =
        element.conditions(Condition.OneOfTypes.class).stream().map(ConditionChecks::of).toList();
    this.conditions =
        element.conditions().stream()
            .filter(condition -> !(condition instanceof Condition.OneOfTypes))
            .map(ConditionChecks::of)
            .toList();
    this.children =
        element.children().stream()
            .map(child -> new ElementCheck(child, id + "." + child.name()))
            .toList();
    this.slices = element.slicing().map(how -> new SliceCheck(how, id));
  }

  private static Predicate<Item> typed(Element element) {
    List<String> types =
        element.conditions(Condition.OneOfTypes.class).stream()
            .flatMap(condition -> condition.types().stream())
            .toList();
    return item -> types.isEmpty() || types.contains(item.type());
  }

  Element element() {
    return element;
  }

  String id() {
    return id;
  }

  /** Checks the members of an item that the element is about. */
  void checkIn(Item parent, Judgement report) {
    List<Item> found = parent.members(element.name());
    count(parent, found.size(), report);
    found.forEach(item -> check(item, report));
    slices.ifPresentOrElse(
        how -> how.check(parent, found.stream().filter(typed).toList(), report),
        () -> found.forEach(i -> unsliced(i, report)));
  }

  /** A component of a finding that has none may be anything. */
  private static void unsliced(Item item, Judgement report) {
    if (item.type().equals("Observation.component")) {
      report.doubt(item, "a component that the profile does not have");
    }
  }

  /** Checks one occurrence; of a wrong type nothing else is said. */
  void check(Item item, Judgement report) {
    types.forEach(type -> type.check(item, report));
    if (typed.test(item)) {
      conditions.forEach(condition -> condition.check(item, report));
      children.forEach(child -> child.checkIn(item, report));
    }
  }

  /** Checks how many there are. */
  private void count(Item parent, int found, Judgement report) {
    if (found < element.min()) {
      report.wrong(parent, counted(found, "at least", element.min()));
    }
    if (element.max() != Element.AS_BASE && found > element.max()) {
      report.wrong(parent, counted(found, "at most", element.max()));
    }
  }

  private String counted(int found, String limit, int wanted) {
    return "saw " + found + " of " + id + ", wanted " + limit + " " + wanted;
  }
}
