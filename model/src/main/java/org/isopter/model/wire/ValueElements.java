package org.isopter.model.wire;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import org.isopter.model.finding.Spec;

/** Makes the {@code value[x]} of an observation or of a component. */
final class ValueElements {

  private static final String VALUE = ObservationMember.VALUE.label();

  private ValueElements() {}

  /** Returns the value of an element that has values of one spec only. */
  static Element one(Spec spec, int least) {
    return spec.fold(new Details(typed(spec, least), false));
  }

  /** Returns the value of a component; in words a place may have some that are not in our list. */
  static Element part(Spec spec, int least) {
    return spec.fold(new Details(typed(spec, least), true));
  }

  private static Element typed(Spec spec, int least) {
    return Element.of(VALUE)
        .occurs(least, Element.AS_BASE)
        .with(new Condition.OneOfTypes(List.of(ValueType.of(spec).type())))
        .support();
  }

  /** Returns the value of an element that has values of several specs, told apart by their type. */
  static Element choice(List<Spec> specs, Condition.Bound valueSet) {
    List<ValueType> kinds =
        specs.stream()
            .map(ValueType::of)
            .distinct()
            .sorted(Comparator.comparing(ValueType::type))
            .toList();
    List<String> types = kinds.stream().map(ValueType::type).toList();
    List<Element> slices = kinds.stream().map(type -> slice(type, valueSet)).toList();
    return Element.of(VALUE)
        .with(new Condition.OneOfTypes(types))
        .sliced(Slicing.closed(Slicing.By.TYPE, slices));
  }

  private static Element slice(ValueType type, Condition.Bound valueSet) {
    Element slice =
        Element.of(type.member()).occurs(0, 1).with(new Condition.OneOfTypes(List.of(type.type())));
    return switch (type) {
      case CONCEPT -> slice.with(valueSet);
      case QUANTITY -> slice.holding(exact());
      case RATIO -> slice.holding(exactRatio());
      case INTEGER, TRUTH, TEXT -> slice;
    };
  }

  private static List<Element> exact() {
    return List.of(Element.once("value"), Element.none("comparator"));
  }

  private static List<Element> exactRatio() {
    return List.of(
        Element.once("numerator").holding(exact()), Element.once("denominator").holding(exact()));
  }

  /** Adds what is special to a spec. */
  private static final class Details implements Spec.Cases<Element> {

    private final Element value;
    private final boolean extensible;

    Details(Element value, boolean extensible) {
      this.value = value;
      this.extensible = extensible;
    }

    @Override
    public Element measure(Spec.Measure spec) {
      List<Condition> pattern = new ArrayList<>();
      if (spec.spans().size() == 1) {
        pattern.add(new Condition.Pattern(new Fixed.OfQuantity(spec.spans().get(0).unit())));
      }
      return value.withAll(pattern).holding(exact());
    }

    @Override
    public Element count(Spec.Count spec) {
      return value;
    }

    @Override
    public Element coded(Spec.Coded spec) {
      Condition.Bound list = Lists.of(spec.answers());
      return value.with(extensible ? list.orOthers() : list);
    }

    @Override
    public Element truth(Spec.Truth spec) {
      return value;
    }

    @Override
    public Element text(Spec.Text spec) {
      return value.with(new Condition.Longest(spec.longest()));
    }

    @Override
    public Element ratio(Spec.Ratio spec) {
      return value
          .with(new Condition.Pattern(new Fixed.OfRatio(spec.unit())))
          .holding(exactRatio());
    }
  }
}
