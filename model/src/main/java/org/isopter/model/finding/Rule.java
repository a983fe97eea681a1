package org.isopter.model.finding;

import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;
import org.isopter.model.value.Concept;
import org.isopter.model.value.Fault;
import org.isopter.model.value.Unit;

/** A condition between the parts of one value; closed, so that profiles can state it too. */
public sealed interface Rule {

  /** Returns what is wrong with the panel, or nothing. */
  Optional<Fault> check(EncodedValue panel);

  /** Returns a short name, unique in its layout. */
  String id();

  /** Returns the rule in one sentence. */
  String sentence();

  /** Answers for the kind that this rule is. */
  <R> R fold(Cases<R> cases);

  /**
   * One answer for each kind of rule.
   *
   * @param <R> the type of the answers
   */
  interface Cases<R> {
    /** Answers for two parts that go together. */
    R together(Together rule);

    /** Answers for a part that needs certain values. */
    R onlyWith(OnlyWith rule);

    /** Answers for a unit that needs another part. */
    R unitNeeds(UnitNeeds rule);

    /** Answers for parts of which one is there. */
    R anyOf(AnyOf rule);
  }

  /** Either both parts are there or neither is. */
  record Together(String first, String second) implements Rule {
    @Override
    public <R> R fold(Cases<R> cases) {
      return cases.together(this);
    }

    @Override
    public Optional<Fault> check(EncodedValue panel) {
      boolean one = panel.found(first).isPresent();
      if (one == panel.found(second).isPresent()) {
        return Optional.empty();
      }
      String there = one ? first : second;
      String missing = one ? second : first;
      return Optional.of(
          Fault.of(missing, there + " without " + missing, first + " and " + second + " together"));
    }

    @Override
    public String id() {
      return first + "-with-" + second;
    }

    @Override
    public String sentence() {
      return first + " and " + second + " are given together or not at all";
    }
  }

  /** A part makes sense only beside certain values. */
  record OnlyWith(String part, Set<? extends Concept> values) implements Rule {
    @Override
    public <R> R fold(Cases<R> cases) {
      return cases.onlyWith(this);
    }

    @Override
    public Optional<Fault> check(EncodedValue panel) {
      boolean fits =
          panel
              .value()
              .map(value -> value instanceof Datum.Coded c && values.contains(c.concept()))
              .orElse(false);
      if (fits || !panel.parts().containsKey(part)) {
        return Optional.empty();
      }
      String seen = part + " beside " + panel.value().map(DatumTexts::of).orElse("no value");
      return Optional.of(Fault.of(part, seen, part + " only beside " + words()));
    }

    @Override
    public String id() {
      return part + "-only";
    }

    @Override
    public String sentence() {
      return part + " is given only beside " + words();
    }

    private String words() {
      return values.stream().map(Concept::word).sorted().collect(Collectors.joining(" or "));
    }
  }

  /** Parts given in one of some units need another part to make sense of them. */
  record UnitNeeds(List<String> parts, Unit unit, String needed) implements Rule {
    @Override
    public <R> R fold(Cases<R> cases) {
      return cases.unitNeeds(this);
    }

    @Override
    public Optional<Fault> check(EncodedValue panel) {
      Optional<String> user =
          parts.stream()
              .filter(
                  part ->
                      panel.found(part).orElse(null) instanceof Datum.Measure measure
                          && measure.unit().equals(unit))
              .findFirst();
      if (user.isEmpty() || panel.found(needed).isPresent()) {
        return Optional.empty();
      }
      String seen = user.get() + " in " + unit.text() + " without " + needed;
      return Optional.of(Fault.of(needed, seen, needed + " beside lengths in " + unit.text()));
    }

    @Override
    public String id() {
      return needed + "-for-" + unit.text();
    }

    @Override
    public String sentence() {
      return "a length in " + unit.text() + " needs " + needed;
    }
  }

  /** At least one of the parts is there, if only as absent. */
  record AnyOf(List<String> parts) implements Rule {
    @Override
    public <R> R fold(Cases<R> cases) {
      return cases.anyOf(this);
    }

    @Override
    public Optional<Fault> check(EncodedValue panel) {
      boolean any = parts.stream().anyMatch(panel.parts()::containsKey);
      return any
          ? Optional.empty()
          : Optional.of(Fault.of("", "none of " + parts, "at least one of " + parts));
    }

    @Override
    public String id() {
      return "any-part";
    }

    @Override
    public String sentence() {
      return "at least one of " + String.join(", ", parts) + " is given";
    }
  }
}
