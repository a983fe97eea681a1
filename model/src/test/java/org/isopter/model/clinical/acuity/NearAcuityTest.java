package org.isopter.model.clinical.acuity;

import static org.isopter.model.clinical.acuity.AcuityEquivalentsTest.read;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;

import java.math.BigDecimal;
import java.util.Optional;
import java.util.stream.Stream;
import org.isopter.model.clinical.CheckRow;
import org.isopter.model.clinical.CheckTable;
import org.isopter.model.value.Acuity;
import org.isopter.model.value.Quantity;
import org.isopter.model.value.Unit;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

public class NearAcuityTest {

  private static final Optional<Quantity> FORTY = Optional.of(Quantity.of("40", Unit.CENTIMETRE));

  static Stream<CheckRow> rows() {
    return CheckTable.NEAR_ACUITY_40CM.rows();
  }

  @ParameterizedTest
  @MethodSource("rows")
  void turnsPrintAtADistanceIntoAnAngle(CheckRow row) {
    Acuity.MUnits print = (Acuity.MUnits) read(row.cell("M_units") + " M");
    NearAcuity.Equivalents same = NearAcuity.of(print, FORTY).value().orElseThrow();
    assertEquals(row.number("letter_height_mm"), same.heightMm().doubleValue(), 1e-9);
    assertEquals(new BigDecimal(row.cell("decimal_at_40cm")), same.decimal());
    assertEquals(new BigDecimal(row.cell("logmar_at_40cm")), same.logMar());
    assertEquals(row.cell("N_points_nominal"), points(print));
    assertEquals("not convertible", row.cell("jaeger"));
  }

  private static String points(Acuity.MUnits print) {
    return NearAcuity.points(print).value().orElseThrow().toString();
  }

  @Test
  void needsADistanceForAnAngle() {
    Acuity.MUnits print = new Acuity.MUnits(new BigDecimal("0.8"));
    assertFalse(NearAcuity.of(print, Optional.empty()).isGiven());
    assertFalse(NearAcuity.of(print, Optional.of(Quantity.of("40", Unit.DEGREE))).isGiven());
  }

  @Test
  void listsNoPointsThatNobodyPublished() {
    assertFalse(NearAcuity.points(new Acuity.MUnits(new BigDecimal("0.7"))).isGiven());
    assertEquals("6", points(new Acuity.MUnits(new BigDecimal("0.80"))));
  }

  @Test
  void convertsNoJaegerType() {
    assertFalse(NearAcuity.of((Acuity.Jaeger) read("J3")).isGiven());
  }
}
