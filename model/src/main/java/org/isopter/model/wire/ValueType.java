package org.isopter.model.wire;

import org.isopter.model.finding.Datum;
import org.isopter.model.finding.Spec;

/** The types of FHIR in which values travel. */
public enum ValueType {
  QUANTITY("Quantity"),
  INTEGER("integer"),
  CONCEPT("CodeableConcept"),
  TRUTH("boolean"),
  TEXT("string"),
  RATIO("Ratio");

  private static final Spec.Cases<ValueType> OF_SPEC = new OfSpec();
  private static final Datum.Cases<ValueType> OF_DATUM = new OfDatum();

  private final String type;
  private final String member;

  ValueType(String type) {
    this.type = type;
    this.member = ObservationMember.VALUE.of(type);
  }

  /** Returns the type in which the values of a spec travel. */
  public static ValueType of(Spec spec) {
    return spec.fold(OF_SPEC);
  }

  /** Returns the type in which a datum travels. */
  public static ValueType of(Datum datum) {
    return datum.fold(OF_DATUM);
  }

  /** Returns the type as FHIR names it, for instance {@code Quantity}. */
  public String type() {
    return type;
  }

  /** Returns the member that holds a value of the type, for instance {@code valueQuantity}. */
  public String member() {
    return member;
  }

  private static final class OfSpec implements Spec.Cases<ValueType> {
    @Override
    public ValueType measure(Spec.Measure spec) {
      return QUANTITY;
    }

    @Override
    public ValueType count(Spec.Count spec) {
      return INTEGER;
    }

    @Override
    public ValueType coded(Spec.Coded spec) {
      return CONCEPT;
    }

    @Override
    public ValueType truth(Spec.Truth spec) {
      return TRUTH;
    }

    @Override
    public ValueType text(Spec.Text spec) {
      return TEXT;
    }

    @Override
    public ValueType ratio(Spec.Ratio spec) {
      return RATIO;
    }
  }

  private static final class OfDatum implements Datum.Cases<ValueType> {
    @Override
    public ValueType measure(Datum.Measure measure) {
      return QUANTITY;
    }

    @Override
    public ValueType count(Datum.Count count) {
      return INTEGER;
    }

    @Override
    public ValueType coded(Datum.Coded coded) {
      return CONCEPT;
    }

    @Override
    public ValueType truth(Datum.Truth truth) {
      return TRUTH;
    }

    @Override
    public ValueType text(Datum.Text text) {
      return TEXT;
    }

    @Override
    public ValueType ratio(Datum.Ratio ratio) {
      return RATIO;
    }
  }
}
