package org.isopter.model.clinical.lens;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.math.BigDecimal;
import java.util.Optional;
import java.util.stream.Stream;
import org.isopter.model.catalogue.Refractions.Cylinder;
import org.isopter.model.catalogue.Refractions.Refraction;
import org.isopter.model.clinical.CheckRow;
import org.isopter.model.clinical.CheckTable;
import org.isopter.model.value.Quantity;
import org.isopter.model.value.Unit;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

public class PowerVectorTest {

  static Stream<CheckRow> rows() {
    return CheckTable.POWER_VECTORS.rows();
  }

  private static Lens lens(CheckRow row) {
    BigDecimal sphere = new BigDecimal(row.cell("sphere"));
    return row.isBlank("cyl")
        ? Lens.sphere(sphere)
        : lens(sphere.toString(), row.cell("cyl"), Integer.parseInt(row.cell("axis")));
  }

  public static Lens lens(String sphere, String cylinder, int axis) {
    return Lens.of(new BigDecimal(sphere), new BigDecimal(cylinder), axis).orThrow();
  }

  @ParameterizedTest
  @MethodSource("rows")
  void turnsALensIntoItsVector(CheckRow row) {
    PowerVector vector = PowerVector.of(lens(row));
    assertEquals(row.number("M"), vector.m(), 0.0005);
    assertEquals(row.number("J0"), vector.j0(), 0.00005);
    assertEquals(row.number("J45"), vector.j45(), 0.00005);
    assertEquals(row.number("B"), vector.blur(), 0.00005);
    assertEquals(0, lens(row).sphericalEquivalent().compareTo(new BigDecimal(row.cell("M"))));
  }

  @ParameterizedTest
  @MethodSource("rows")
  void transposesWithoutChangingTheLens(CheckRow row) {
    Lens lens = lens(row);
    if (!row.isBlank("transposed")) {
      assertEquals(row.cell("transposed").replaceAll("x0+", "x"), lens.transposed().toString());
    }
    assertTrue(lens.isSameAs(lens.transposed()));
    assertEquals(lens, lens.transposed().transposed());
    assertEquals(
        row.cell("back_to_minus_cyl").replace(" +0.00", " DS"), lens.inMinusCylinder().toString());
    assertEquals(lens.inMinusCylinder().toString(), PowerVector.of(lens).toLens().toString());
  }

  @Test
  void tellsLensesApartThatAreNotTheSame() {
    assertFalse(lens("-2.00", "-1.50", 30).isSameAs(lens("-2.00", "-1.50", 31)));
    assertFalse(lens("-2.00", "-1.50", 30).isSameAs(lens("-2.25", "-1.50", 30)));
  }

  @Test
  void hasNoAxisWithoutACylinderAndReadsAnAxisOfZeroAs180() {
    assertEquals(Optional.empty(), lens("1.00", "0.00", 90).cylinderAxis());
    assertEquals(Optional.of(180), lens("1.00", "-0.50", 0).cylinderAxis());
    assertFalse(Lens.of(BigDecimal.ONE, BigDecimal.ONE, 181).isOk());
    assertEquals(Optional.of(90), lens("1.00", "-0.50", 180).transposed().cylinderAxis());
    assertEquals(Optional.of(180), lens("1.00", "-0.50", 90).transposed().cylinderAxis());
  }

  @Test
  void comesBackFromTheVectorOnEveryAxis() {
    for (int axis = 1; axis <= 180; axis++) {
      Lens lens = lens("-1.25", "-2.50", axis);
      assertEquals(lens, PowerVector.of(lens).toLens());
    }
  }

  @Test
  void readsARecordedRefraction() {
    Quantity power = Quantity.of("-1.50", Unit.DIOPTRE);
    Refraction refraction =
        new Refraction(
            Quantity.of("-2.00", Unit.DIOPTRE),
            Optional.of(new Cylinder(power, Quantity.of("30", Unit.DEGREE))),
            Optional.empty(),
            Optional.empty(),
            Optional.empty(),
            Optional.empty(),
            Optional.empty());
    assertEquals(lens("-2.00", "-1.50", 30), Lens.of(refraction).orThrow());
  }
}
