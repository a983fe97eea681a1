package org.isopter.model.finding;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.Function;
import org.isopter.model.value.Concept;
import org.isopter.model.value.Fault;
import org.isopter.model.value.Outcome;
import org.isopter.model.value.Result;

/**
 * How a whole value is laid out: a value, a choice of values or none, with parts and rules.
 *
 * @param <V> the Java type of the whole value
 */
public final class Layout<V> {

  private final Optional<Choice<V, ?>> choice;
  private final Optional<Part<V, ?>> value;
  private final List<Part<V, ?>> parts;
  private final List<Rule> rules;
  private final Function<Values, V> build;
  private final List<Variant> variants;

  private Layout(
      Optional<Choice<V, ?>> choice,
      Optional<Part<V, ?>> value,
      List<Part<V, ?>> parts,
      List<Rule> rules,
      Function<Values, V> build) {
    this.choice = choice;
    this.value = value;
    this.parts = List.copyOf(parts);
    this.rules = List.copyOf(rules);
    this.build = build;
    this.variants = makeVariants();
  }

  /** Returns the layout of a single value without parts. */
  public static <P> Layout<P> of(Shape<P> shape) {
    Part<P, P> value = Part.value(shape, Function.identity());
    return new Layout<>(
        Optional.empty(), Optional.of(value), List.of(), List.of(), values -> values.get(value));
  }

  /** Returns the layout of a single value with parts. */
  public static <V, P> Layout<V> of(
      Shape<P> shape, Function<V, P> getter, List<Part<V, ?>> parts, Alternative.Make<P, V> make) {
    Part<V, P> value = Part.value(shape, getter);
    return new Layout<>(
        Optional.empty(),
        Optional.of(value),
        parts,
        List.of(),
        values -> make.of(values.get(value), values));
  }

  /** Returns the layout of a value that has only parts, at least one of which must be there. */
  public static <V> Layout<V> ofParts(List<Part<V, ?>> parts, Function<Values, V> build) {
    Rule anyOf = new Rule.AnyOf(parts.stream().<String>map(Part::key).toList());
    return new Layout<>(Optional.empty(), Optional.empty(), parts, List.of(anyOf), build);
  }

  /** Returns the layout of a choice of values with parts that all alternatives share. */
  public static <V, C> Layout<V> of(
      Choice<V, C> choice, List<Part<V, ?>> parts, Alternative.Make<C, V> make) {
    return new Layout<>(
        Optional.of(choice),
        Optional.empty(),
        parts,
        List.of(),
        values -> make.of(choice.build(values.panel()), values));
  }

  /** Returns the layout with further rules between its parts. */
  public Layout<V> rules(Rule... more) {
    List<Rule> all = new ArrayList<>(rules);
    all.addAll(Arrays.asList(more));
    return new Layout<>(choice, value, parts, all, build);
  }

  /** Returns the variants, as plain lists: one per alternative of a choice, otherwise one. */
  public List<Variant> variants() {
    return variants;
  }

  /** Returns the variant that a notation names, or the only one there is. */
  public Optional<Variant> variant(Optional<Concept> notation) {
    for (Variant variant : variants) {
      if (variant.notation().equals(notation)) {
        return Optional.of(variant);
      }
    }
    return Optional.empty();
  }

  /** Returns the choice, where the value is one. */
  public Optional<Choice<V, ?>> choice() {
    return choice;
  }

  /** Returns the parts that every variant has. */
  public List<Part<V, ?>> commonParts() {
    return parts;
  }

  /** Returns the rules between parts. */
  public List<Rule> rules() {
    return rules;
  }

  /** Says whether the layout is one value and nothing else. */
  public boolean isSingle() {
    return choice.isEmpty() && parts.isEmpty();
  }

  /**
   * Returns the first-order form of a value.
   *
   * @throws org.isopter.model.value.FaultException when the value is none of the alternatives
   */
  public EncodedValue encode(V whole) {
    PartSink sink = new PartSink();
    Optional<Concept> notation = Optional.empty();
    Optional<Datum> datum = value.flatMap(part -> part.in(whole)).flatMap(Outcome::ifFound);
    if (choice.isPresent()) {
      Object chosen = choice.get().in(whole);
      Alternative<?> alternative = choice.get().alternativeOf(chosen);
      notation = Optional.of(alternative.notation());
      datum = alternative.valueOf(chosen);
      alternative.collect(chosen, sink);
    }
    parts.forEach(part -> sink.put(part.key(), part.in(whole)));
    return new EncodedValue(notation, datum, sink.parts());
  }

  /** Returns the value of a panel, or every fault in it; paths are part keys. */
  public Result<V> decode(EncodedValue panel) {
    List<Fault> faults = check(panel);
    return faults.isEmpty()
        ? Result.of(() -> build.apply(new Values(panel)))
        : Result.refused(faults);
  }

  /** Returns the value of a panel with the panel, or every fault in it; paths are part keys. */
  public Result<Decoded<V>> read(EncodedValue panel) {
    return decode(panel).map(value -> new Decoded<>(this, inOrder(panel), value));
  }

  /** A value has one form, in whatever order its parts were read. */
  private EncodedValue inOrder(EncodedValue panel) {
    Map<String, Outcome<Datum>> parts = new LinkedHashMap<>();
    for (Part<?, ?> part : variant(panel.notation()).orElseThrow().parts()) {
      Outcome<Datum> outcome = panel.parts().get(part.key());
      if (outcome != null) {
        parts.put(part.key(), outcome);
      }
    }
    return new EncodedValue(panel.notation(), panel.value(), parts);
  }

  /** Returns a value with its encoded form, or every fault in it; paths are part keys. */
  public Result<Decoded<V>> check(V whole) {
    Result<EncodedValue> encoded = Result.of(() -> encode(whole));
    return encoded.flatMap(
        panel -> {
          List<Fault> faults = check(panel);
          return faults.isEmpty()
              ? Result.ok(new Decoded<>(this, panel, whole))
              : Result.refused(faults);
        });
  }

  /** Returns every fault in a panel; paths are part keys. */
  public List<Fault> check(EncodedValue panel) {
    return variant(panel.notation())
        .map(variant -> check(panel, variant))
        .orElseGet(() -> List.of(unknownNotation(panel)));
  }

  /** Reads the written form of a choice; the common parts may explain it. */
  public Result<EncodedValue> readChoice(String text, EncodedValue others) {
    Choice<V, ?> written = choice.orElseThrow();
    return written.read(text, new Values(others)).flatMap(chosen -> chosenPanel(written, chosen));
  }

  /** Returns the written form of a choice, which is read as the same beside the same parts. */
  public String writeChoice(EncodedValue panel) {
    return choice.orElseThrow().write(panel);
  }

  private Result<EncodedValue> chosenPanel(Choice<V, ?> written, Object chosen) {
    Optional<? extends Alternative<?>> alternative =
        written.alternatives().stream().filter(a -> a.holds(chosen)).findFirst();
    if (alternative.isEmpty()) {
      String wanted = written.notations().choices();
      return Result.refused(Fault.of("", "\"" + chosen + "\"", wanted));
    }
    PartSink sink = new PartSink();
    alternative.get().collect(chosen, sink);
    return Result.ok(
        new EncodedValue(
            Optional.of(alternative.get().notation()),
            alternative.get().valueOf(chosen),
            sink.parts()));
  }

  private List<Fault> check(EncodedValue panel, Variant variant) {
    List<Fault> faults = new ArrayList<>();
    checkValue(panel, variant).ifPresent(faults::add);
    int known = 0;
    for (Part<?, ?> part : variant.parts()) {
      Outcome<Datum> outcome = panel.parts().get(part.key());
      known += outcome == null ? 0 : 1;
      checkPart(outcome, part).ifPresent(faults::add);
    }
    if (known < panel.parts().size()) {
      faults.addAll(unknownParts(panel, variant));
    }
    if (faults.isEmpty()) {
      rules.forEach(rule -> rule.check(panel).ifPresent(faults::add));
    }
    return faults;
  }

  private static List<Fault> unknownParts(EncodedValue panel, Variant variant) {
    List<String> known = variant.parts().stream().<String>map(Part::key).toList();
    return panel.parts().keySet().stream()
        .filter(key -> !known.contains(key))
        .map(key -> Fault.of(key, "a part of that name", "one of " + known))
        .toList();
  }

  private static Optional<Fault> checkValue(EncodedValue panel, Variant variant) {
    if (variant.value().isEmpty()) {
      return panel.value().map(extra -> Fault.of(Part.VALUE, DatumTexts.of(extra), "only parts"));
    }
    Spec spec = variant.value().get();
    return panel
        .value()
        .map(datum -> SpecCheck.check(spec, datum))
        .orElseGet(() -> Optional.of(Fault.of("", "no value", DatumTexts.wanted(spec))))
        .map(fault -> fault.at(Part.VALUE));
  }

  private static Optional<Fault> checkPart(
      @org.jspecify.annotations.Nullable Outcome<Datum> outcome, Part<?, ?> part) {
    if (outcome == null) {
      return part.isRequired()
          ? Optional.of(Fault.of(part.key(), "nothing", DatumTexts.wanted(part.spec())))
          : Optional.empty();
    }
    Optional<Fault> fault =
        outcome.fold(
            datum -> SpecCheck.check(part.spec(), datum),
            reason ->
                part.mayBeAbsent()
                    ? Optional.empty()
                    : Optional.of(
                        Fault.of("", "absent: " + reason.word(), DatumTexts.wanted(part.spec()))));
    return fault.map(found -> found.at(part.key()));
  }

  private Fault unknownNotation(EncodedValue panel) {
    String seen = panel.notation().map(Concept::word).orElse("no notation");
    String wanted = choice.map(c -> c.notations().choices()).orElse("no notation");
    return Fault.of(choice.map(Choice::key).orElse(Part.VALUE), seen, wanted);
  }

  private List<Variant> makeVariants() {
    if (choice.isEmpty()) {
      return List.of(Variant.of(Optional.empty(), value.map(Part::spec), List.of(), parts));
    }
    List<Variant> made = new ArrayList<>();
    for (Alternative<?> alternative : choice.get().alternatives()) {
      made.add(
          Variant.of(
              Optional.of(alternative.notation()),
              Optional.of(alternative.spec()),
              alternative.parts(),
              parts));
    }
    return List.copyOf(made);
  }
}
