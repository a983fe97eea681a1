package org.isopter.profiles.artefact.view;

import org.isopter.model.finding.Spec;
import org.isopter.model.wire.ValueType;

/**
 * Adds the columns of a value, in the form its spec has.
 *
 * <p>A number stands as recorded, with its unit beside it: a view converts nothing.
 */
final class ViewValue implements Spec.Cases<ViewColumns> {

  private final ViewColumns columns;
  private final String name;
  private final String holder;
  private final String meaning;

  /**
   * Makes it.
   *
   * @param columns where to add
   * @param name the name of the value
   * @param holder the path to what has the value, ending in a point; empty for the observation
   * @param meaning what the value is
   */
  ViewValue(ViewColumns columns, String name, String holder, String meaning) {
    this.columns = columns;
    this.name = name;
    this.holder = holder;
    this.meaning = meaning;
  }

  @Override
  public ViewColumns measure(Spec.Measure spec) {
    String quantity = of(spec);
    columns.add(name, "decimal", quantity + ".value", meaning + ", as recorded");
    return unit(quantity);
  }

  @Override
  public ViewColumns count(Spec.Count spec) {
    return columns.add(name, "integer", of(spec), meaning);
  }

  @Override
  public ViewColumns coded(Spec.Coded spec) {
    return columns.coding(name, of(spec) + ".coding", meaning);
  }

  @Override
  public ViewColumns truth(Spec.Truth spec) {
    return columns.add(name, "boolean", of(spec), meaning);
  }

  @Override
  public ViewColumns text(Spec.Text spec) {
    return columns.add(name, "string", of(spec), meaning);
  }

  @Override
  public ViewColumns ratio(Spec.Ratio spec) {
    String ratio = of(spec);
    for (String side : new String[] {"numerator", "denominator"}) {
      columns.add(
          name + "_" + side, "decimal", ratio + "." + side + ".value", meaning + ": " + side);
    }
    return unit(ratio + ".numerator");
  }

  private ViewColumns unit(String quantity) {
    return columns
        .add(name + "_unit", "string", quantity + ".unit", meaning + ": unit")
        .add(name + "_unit_code", "code", quantity + ".code", meaning + ": UCUM code of the unit");
  }

  private String of(Spec spec) {
    return holder + "value.ofType(" + ValueType.of(spec).type() + ")";
  }
}
