package org.isopter.mapper;

import java.util.List;
import java.util.Optional;
import org.hl7.fhir.r4.model.BooleanType;
import org.hl7.fhir.r4.model.Bundle;
import org.hl7.fhir.r4.model.CodeableConcept;
import org.hl7.fhir.r4.model.Coding;
import org.hl7.fhir.r4.model.DateTimeType;
import org.hl7.fhir.r4.model.IntegerType;
import org.hl7.fhir.r4.model.Narrative;
import org.hl7.fhir.r4.model.Observation;
import org.hl7.fhir.r4.model.Quantity;
import org.hl7.fhir.r4.model.Ratio;
import org.hl7.fhir.r4.model.Reference;
import org.hl7.fhir.r4.model.StringType;
import org.hl7.fhir.r4.model.Type;
import org.isopter.model.exam.Exam;
import org.isopter.model.exam.Fact;
import org.isopter.model.finding.Datum;
import org.isopter.model.finding.EncodedValue;
import org.isopter.model.finding.Part;
import org.isopter.model.value.Code;
import org.isopter.model.value.Unit;

/** The same observations built as HAPI resource objects: the baseline for the writer. */
final class HapiBaseline {

  private static final Datum.Cases<Type> VALUES =
      new Datum.Cases<>() {
        @Override
        public Type measure(Datum.Measure measure) {
          return quantity(measure.value(), measure.unit());
        }

        @Override
        public Type count(Datum.Count count) {
          return new IntegerType(count.value());
        }

        @Override
        public Type coded(Datum.Coded coded) {
          return concept(List.of(coded.concept().code()));
        }

        @Override
        public Type truth(Datum.Truth truth) {
          return new BooleanType(truth.value());
        }

        @Override
        public Type text(Datum.Text text) {
          return new StringType(text.value());
        }

        @Override
        public Type ratio(Datum.Ratio ratio) {
          return new Ratio()
              .setNumerator(quantity(ratio.numerator(), ratio.unit()))
              .setDenominator(quantity(ratio.denominator(), ratio.unit()));
        }
      };

  private HapiBaseline() {}

  static Bundle bundle(Exam exam) {
    Bundle bundle = new Bundle();
    bundle.setType(Bundle.BundleType.COLLECTION);
    exam.facts().forEach(fact -> bundle.addEntry().setResource(observation(exam, fact)));
    return bundle;
  }

  private static Observation observation(Exam exam, Fact<?> fact) {
    Observation observation = new Observation();
    observation.getMeta().addProfile(fact.finding().id());
    observation.getText().setStatus(Narrative.NarrativeStatus.GENERATED);
    observation.getText().setDivAsString("<div>" + fact.finding().title() + "</div>");
    observation.addIdentifier().setSystem("s").setValue(fact.finding().id());
    observation.setStatus(Observation.ObservationStatus.FINAL);
    observation.addCategory(concept(List.of(fact.site().code())));
    Optional<EncodedValue> panel = fact.panel();
    observation.setCode(concept(fact.finding().codes().all()).setText(fact.finding().title()));
    observation.setSubject(new Reference().setDisplay("p"));
    observation.setEffective(new DateTimeType(exam.header().performed().toString()));
    observation.setBodySite(concept(List.of(fact.site().code())));
    fact.method().ifPresent(m -> observation.setMethod(concept(List.of(m.code()))));
    panel.flatMap(EncodedValue::value).ifPresent(value -> observation.setValue(value.fold(VALUES)));
    panel.ifPresent(found -> components(fact, found, observation));
    return observation;
  }

  private static void components(Fact<?> fact, EncodedValue panel, Observation observation) {
    for (Part<?, ?> part :
        fact.finding().layout().variant(panel.notation()).orElseThrow().parts()) {
      panel
          .found(part.key())
          .ifPresent(
              datum ->
                  observation
                      .addComponent()
                      .setCode(concept(List.of(part.code())))
                      .setValue(datum.fold(VALUES)));
    }
  }

  private static CodeableConcept concept(List<Code> codes) {
    CodeableConcept concept = new CodeableConcept();
    codes.forEach(
        code -> concept.addCoding(new Coding(code.system(), code.code(), code.display())));
    return concept;
  }

  private static Quantity quantity(java.math.BigDecimal value, Unit unit) {
    return new Quantity()
        .setValue(value)
        .setUnit(unit.label())
        .setSystem(Code.UCUM)
        .setCode(unit.ucum());
  }
}
