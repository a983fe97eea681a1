package org.isopter.profiles.artefact.invariant;

import java.util.Collection;
import java.util.stream.Collectors;
import org.isopter.model.value.Code;

/** The pieces of FHIRPath that the invariants are put together from. */
public final class Paths {

  private Paths() {}

  /** Returns the text as a FHIRPath string. */
  public static String text(String plain) {
    return "'" + plain.replace("\\", "\\\\").replace("'", "\\'") + "'";
  }

  /** Returns the condition, on a coding or a quantity, that it has this code. */
  public static String is(Code code) {
    return "system = " + text(code.system()) + " and code = " + text(code.code());
  }

  /** Returns the condition, on a concept, that it has one of these codes. */
  public static String codedAs(Collection<Code> codes) {
    return "coding.where("
        + codes.stream().map(Paths::is).collect(Collectors.joining(" or "))
        + ").exists()";
  }

  /** Returns the path, on an observation, of the component under this code. */
  public static String component(Code code) {
    return "component.where(code." + codedAs(java.util.List.of(code)) + ")";
  }

  /** Returns the condition, on whatever has a value, that it is one of these codes. */
  public static String valueIn(Collection<Code> codes) {
    return "value.ofType(CodeableConcept)." + codedAs(codes);
  }

  /** Returns the condition that holds for a fact without a value as well. */
  static String unlessAbsent(String condition) {
    return "dataAbsentReason.exists() or " + condition;
  }
}
