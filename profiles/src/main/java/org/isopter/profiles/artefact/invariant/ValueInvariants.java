package org.isopter.profiles.artefact.invariant;

import java.util.ArrayList;
import java.util.List;
import org.isopter.model.finding.DatumTexts;
import org.isopter.model.finding.Spec;

/** The invariants of a single value: its unit where there are several, its range, its decimals. */
public final class ValueInvariants {

  private ValueInvariants() {}

  /**
   * Returns the invariants on whatever has the value.
   *
   * @param prefix what their keys begin with
   * @param what what the sentences call the value
   */
  public static List<Invariant> of(String prefix, String what, Spec spec) {
    ValueKind kind = ValueKind.of(spec);
    List<Invariant> invariants = new ArrayList<>();
    if (spec instanceof Spec.Measure measure && measure.spans().size() > 1) {
      add(
          invariants,
          prefix + "-unit",
          what + " is in a unit of " + DatumTexts.wanted(spec),
          kind.unit());
    }
    add(invariants, prefix + "-range", what + " is " + DatumTexts.wanted(spec), kind.range());
    add(invariants, prefix + "-decimals", what + " has " + decimals(spec), kind.decimals());
    return invariants;
  }

  /** Returns the sentence on the digits behind the point. */
  static String decimals(Spec spec) {
    int most =
        spec instanceof Spec.Measure measure
            ? measure.decimals()
            : spec instanceof Spec.Ratio ratio ? ratio.decimals() : 0;
    return most == 0
        ? "no digits behind the point"
        : "at most " + most + " digits behind the point";
  }

  private static void add(List<Invariant> to, String key, String human, String expression) {
    if (!expression.isEmpty()) {
      to.add(Invariant.of(key, human, expression, "value"));
    }
  }
}
