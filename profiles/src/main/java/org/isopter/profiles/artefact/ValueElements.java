package org.isopter.profiles.artefact;

import java.util.List;
import java.util.TreeSet;
import org.hl7.fhir.r4.model.ElementDefinition;
import org.hl7.fhir.r4.model.ElementDefinition.DiscriminatorType;
import org.hl7.fhir.r4.model.Quantity;
import org.hl7.fhir.r4.model.Ratio;
import org.isopter.model.finding.Spec;
import org.isopter.model.value.Unit;
import org.isopter.profiles.artefact.invariant.ValueKind;

/** Writes what a value may be into the {@code value[x]} of an observation or of a component. */
final class ValueElements {

  private static final String VALUE = ".value[x]";

  private final Differential differential;

  ValueElements(Differential differential) {
    this.differential = differential;
  }

  /** Adds the value of an element that has values of one spec only. */
  void one(String parent, Spec spec, int least) {
    ElementDefinition value = differential.at(parent + VALUE);
    value.setMin(least).addType().setCode(ValueKind.of(spec).type());
    spec.fold(new Details(value, parent + VALUE));
  }

  /** Adds the value of an element that has values of several specs, told apart by their type. */
  void choice(String parent, List<Spec> specs, String valueSet) {
    ElementDefinition value = differential.sliced(parent + VALUE, DiscriminatorType.TYPE, "$this");
    TreeSet<String> types = new TreeSet<>(specs.stream().map(s -> ValueKind.of(s).type()).toList());
    types.forEach(type -> value.addType().setCode(type));
    for (String type : types) {
      String slice =
          "value" + type.substring(0, 1).toUpperCase(java.util.Locale.ROOT) + type.substring(1);
      slice(parent + VALUE + ":" + slice, type, valueSet);
    }
  }

  private void slice(String id, String type, String valueSet) {
    ElementDefinition element = differential.at(id).setMin(0).setMax("1");
    element.addType().setCode(type);
    if (type.equals("CodeableConcept")) {
      Differential.bind(element, valueSet);
      differential.oneCoding(id);
    } else if (type.equals("Quantity")) {
      exact(id);
    } else if (type.equals("Ratio")) {
      exactRatio(id);
    }
  }

  private void exact(String quantityId) {
    differential.once(quantityId + ".value");
    differential.none(quantityId + ".comparator");
  }

  private void exactRatio(String ratioId) {
    differential.once(ratioId + ".numerator");
    exact(ratioId + ".numerator");
    differential.once(ratioId + ".denominator");
    exact(ratioId + ".denominator");
  }

  private static Quantity pattern(Unit unit) {
    return new Quantity()
        .setUnit(unit.label())
        .setSystem(ValueKind.ucum(unit).system())
        .setCode(unit.ucum());
  }

  /** Writes what is special to a spec. */
  private final class Details implements Spec.Cases<ElementDefinition> {

    private final ElementDefinition value;
    private final String id;

    Details(ElementDefinition value, String id) {
      this.value = value;
      this.id = id;
    }

    @Override
    public ElementDefinition measure(Spec.Measure spec) {
      if (spec.spans().size() == 1) {
        value.setPattern(pattern(spec.spans().get(0).unit()));
      }
      exact(id);
      return value;
    }

    @Override
    public ElementDefinition count(Spec.Count spec) {
      return value;
    }

    @Override
    public ElementDefinition coded(Spec.Coded spec) {
      Differential.bind(value, spec.answers().id());
      differential.oneCoding(id);
      return value;
    }

    @Override
    public ElementDefinition truth(Spec.Truth spec) {
      return value;
    }

    @Override
    public ElementDefinition text(Spec.Text spec) {
      return value.setMaxLength(spec.longest());
    }

    @Override
    public ElementDefinition ratio(Spec.Ratio spec) {
      value.setPattern(
          new Ratio().setNumerator(pattern(spec.unit())).setDenominator(pattern(spec.unit())));
      exactRatio(id);
      return value;
    }
  }
}
