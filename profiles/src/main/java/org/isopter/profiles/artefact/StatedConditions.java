package org.isopter.profiles.artefact;

import org.hl7.fhir.r4.model.CodeableConcept;
import org.hl7.fhir.r4.model.Coding;
import org.hl7.fhir.r4.model.ElementDefinition;
import org.hl7.fhir.r4.model.ElementDefinition.ConstraintSeverity;
import org.hl7.fhir.r4.model.Enumerations.BindingStrength;
import org.hl7.fhir.r4.model.Quantity;
import org.hl7.fhir.r4.model.Ratio;
import org.hl7.fhir.r4.model.Type;
import org.isopter.model.value.Canonical;
import org.isopter.model.value.Code;
import org.isopter.model.value.Unit;
import org.isopter.model.wire.Condition;
import org.isopter.model.wire.Fixed;
import org.isopter.model.wire.ValueForm;

/** States the conditions of an element in its definition. */
final class StatedConditions implements Condition.Cases<ElementDefinition> {

  private static final Patterns PATTERNS = new Patterns();

  private final ElementDefinition definition;
  private final String source;

  /**
   * Makes it.
   *
   * @param source the canonical address of the profile that states the rules
   */
  StatedConditions(ElementDefinition definition, String source) {
    this.definition = definition;
    this.source = source;
  }

  @Override
  public ElementDefinition pattern(Condition.Pattern condition) {
    return definition.setPattern(condition.fixed().fold(PATTERNS));
  }

  @Override
  public ElementDefinition bound(Condition.Bound condition) {
    definition
        .getBinding()
        .setStrength(condition.extensible() ? BindingStrength.EXTENSIBLE : BindingStrength.REQUIRED)
        .setValueSet(Canonical.valueSet(condition.valueSet()));
    return definition;
  }

  @Override
  public ElementDefinition oneOfTypes(Condition.OneOfTypes condition) {
    condition.types().forEach(type -> definition.addType().setCode(type));
    return definition;
  }

  @Override
  public ElementDefinition longest(Condition.Longest condition) {
    return definition.setMaxLength(condition.characters());
  }

  @Override
  public ElementDefinition rule(Condition.Rule condition) {
    definition
        .addConstraint()
        .setKey(condition.key())
        .setSeverity(ConstraintSeverity.ERROR)
        .setHuman(condition.human())
        .setExpression(condition.expression())
        .setSource(source);
    return definition;
  }

  /** Makes the patterns of fixed values. */
  private static final class Patterns implements Fixed.Cases<Type> {

    @Override
    public Type coding(Fixed.OfCoding fixed) {
      return coding(fixed.code());
    }

    @Override
    public Type concept(Fixed.OfConcept fixed) {
      return new CodeableConcept().addCoding(coding(fixed.code()));
    }

    @Override
    public Type quantity(Fixed.OfQuantity fixed) {
      return quantity(fixed.unit());
    }

    @Override
    public Type ratio(Fixed.OfRatio fixed) {
      return new Ratio()
          .setNumerator(quantity(fixed.unit()))
          .setDenominator(quantity(fixed.unit()));
    }

    private static Coding coding(Code code) {
      return new Coding().setSystem(code.system()).setCode(code.code());
    }

    private static Quantity quantity(Unit unit) {
      return new Quantity().setSystem(ValueForm.ucum(unit).system()).setCode(unit.ucum());
    }
  }
}
