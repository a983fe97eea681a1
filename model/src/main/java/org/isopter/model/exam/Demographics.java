package org.isopter.model.exam;

import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.isopter.model.finding.Datum;
import org.isopter.model.finding.EncodedValue;
import org.isopter.model.finding.Layout;
import org.isopter.model.finding.Part;
import org.isopter.model.finding.Shapes;
import org.isopter.model.finding.Span;
import org.isopter.model.value.Code;
import org.isopter.model.value.Fault;
import org.isopter.model.value.FaultException;
import org.isopter.model.value.Outcome;
import org.isopter.model.value.Quantity;
import org.isopter.model.value.Unit;

/**
 * What an examination states of the person besides who it is.
 *
 * @param age the age at the examination: whole years, or months, weeks or days of a small child
 * @param sex the administrative sex
 */
public record Demographics(Optional<Quantity> age, Optional<AdministrativeSex> sex) {

  /** The age; its limits catch slips (common practice, no source). */
  public static final Part<Demographics, Quantity> AGE =
      Part.<Demographics, Quantity>optional(
              "age",
              "Age",
              Shapes.measure(
                  0,
                  Span.of(Unit.YEAR, "0", "130"),
                  Span.of(Unit.MONTH, "0", "240"),
                  Span.of(Unit.WEEK, "0", "104"),
                  Span.of(Unit.DAY, "0", "90")),
              Demographics::age)
          .coded(Code.loinc("30525-0", "Age"));

  /** The administrative sex. */
  public static final Part<Demographics, AdministrativeSex> SEX =
      Part.<Demographics, AdministrativeSex>optional(
              "sex", "Sex", Shapes.oneOf(AdministrativeSex.class), Demographics::sex)
          .coded(Code.loinc("46098-0", "Sex"));

  /** How both are laid out. */
  public static final Layout<Demographics> LAYOUT =
      Layout.ofParts(
          List.of(AGE, SEX), parts -> new Demographics(parts.find(AGE), parts.find(SEX)));

  /** Nothing is stated. */
  public static final Demographics UNKNOWN = new Demographics(Optional.empty(), Optional.empty());

  /**
   * Makes it.
   *
   * @throws FaultException when the age is no whole number or beyond the limits
   */
  public Demographics {
    age.ifPresent(Demographics::require);
  }

  /** Returns a person of an age in whole years. */
  public static Demographics years(int age, AdministrativeSex sex) {
    Quantity years = Quantity.of(Integer.toString(age), Unit.YEAR);
    return new Demographics(Optional.of(years), Optional.of(sex));
  }

  private static void require(Quantity age) {
    Outcome<Datum> stated = Outcome.found(AGE.shape().toDatum(age));
    EncodedValue alone =
        new EncodedValue(Optional.empty(), Optional.empty(), Map.of(AGE.key(), stated));
    List<Fault> faults = LAYOUT.check(alone);
    if (!faults.isEmpty()) {
      throw new FaultException(faults);
    }
  }

  /** Says whether neither is stated. */
  public boolean isUnknown() {
    return age.isEmpty() && sex.isEmpty();
  }
}
