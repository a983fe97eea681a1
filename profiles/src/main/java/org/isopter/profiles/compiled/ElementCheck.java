package org.isopter.profiles.compiled;

import java.util.List;
import java.util.Optional;
import java.util.function.Predicate;
import org.isopter.model.wire.Condition;
import org.isopter.model.wire.Element;
import org.isopter.model.wire.ObservationMember;

/** The compiled form of an element: what each occurrence keeps, and how many there may be. */
final class ElementCheck {

  private final Element element;
  private final Name name;
  private final String id;
  private final Predicate<Item> typed;
  private final Check[] types;
  private final Check[] conditions;
  private final ElementCheck[] children;
  private final boolean isComponent;
  private final Optional<SliceCheck> slices;

  /**
   * Compiles an element.
   *
   * @param id the id of its definition, for instance {@code Observation.component:chart.code}
   */
  ElementCheck(Element element, String id) {
    this.element = element;
    this.name = Name.of(element.name());
    this.isComponent = isComponent(element);
    this.id = id;
    this.typed = typed(element);
    this.types =
        element.conditions(Condition.OneOfTypes.class).stream()
            .map(ConditionChecks::of)
            .toArray(Check[]::new);
    this.conditions =
        element.conditions().stream()
            .filter(condition -> !(condition instanceof Condition.OneOfTypes))
            .map(ConditionChecks::of)
            .toArray(Check[]::new);
    this.children =
        element.children().stream()
            .filter(ElementCheck::isChecked)
            .map(child -> new ElementCheck(child, id + "." + child.name()))
            .toArray(ElementCheck[]::new);
    this.slices = element.slicing().map(how -> new SliceCheck(how, id));
  }

  /** A component is doubted even where nothing is said of it; the rest is then free. */
  private static boolean isChecked(Element element) {
    return element.isStated() || !element.children().isEmpty() || isComponent(element);
  }

  private static boolean isComponent(Element element) {
    return element.name().equals(ObservationMember.COMPONENT.label());
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
    int from = parent.from(name);
    int to = parent.to(from, name);
    count(parent, to - from, report);
    List<Item> found = parent.members();
    for (int i = from; i < to; i++) {
      check(found.get(i), report);
    }
    if (slices.isPresent()) {
      slices.get().check(parent, ofType(found.subList(from, to)), report);
    } else if (isComponent) {
      found.subList(from, to).forEach(item -> unsliced(item, report));
    }
  }

  private List<Item> ofType(List<Item> found) {
    return types.length == 0 ? found : found.stream().filter(typed).toList();
  }

  /** A component of a finding that has none may be anything. */
  private static void unsliced(Item item, Judgement report) {
    report.doubt(item, "a component that the profile does not have");
  }

  /** Checks one occurrence; of a wrong type nothing else is said. */
  void check(Item item, Judgement report) {
    for (Check type : types) {
      type.check(item, report);
    }
    if (types.length == 0 || typed.test(item)) {
      for (Check condition : conditions) {
        condition.check(item, report);
      }
      for (ElementCheck child : children) {
        child.checkIn(item, report);
      }
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
