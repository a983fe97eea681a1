package org.isopter.model.wire;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.isopter.model.finding.DatumTexts;
import org.isopter.model.finding.Spec;

/** The rules of a single value: its unit where there are several, its range, its decimals. */
final class ValueRules {

  private ValueRules() {}

  /**
   * Returns the rules on whatever has the value.
   *
   * @param prefix what their keys begin with
   * @param what what the sentences call the value
   */
  static List<Condition.Rule> of(String prefix, String what, Spec spec) {
    ValueForm form = ValueForm.of(spec);
    String wanted = DatumTexts.wanted(spec);
    List<Condition.Rule> rules = new ArrayList<>();
    if (spec instanceof Spec.Measure measure && measure.spans().size() > 1) {
      add(rules, prefix + "-unit", what + " is in a unit of " + wanted, form.unit());
    }
    add(rules, prefix + "-range", what + " is " + wanted, form.range());
    add(rules, prefix + "-decimals", what + " has " + decimals(spec), form.decimals());
    return rules;
  }

  /** Returns the sentence on the digits behind the point. */
  static String decimals(Spec spec) {
    int most =
        switch (ValueType.of(spec)) {
          case QUANTITY -> ((Spec.Measure) spec).decimals();
          case RATIO -> ((Spec.Ratio) spec).decimals();
          case INTEGER, CONCEPT, TRUTH, TEXT -> 0;
        };
    return most == 0
        ? "no digits behind the point"
        : "at most " + most + " digits behind the point";
  }

  private static void add(List<Condition.Rule> to, String key, String human, Optional<Test> test) {
    test.ifPresent(each -> to.add(Condition.Rule.of(key, human, each, Tests.VALUE)));
  }
}
