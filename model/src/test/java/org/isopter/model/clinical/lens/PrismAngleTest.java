package org.isopter.model.clinical.lens;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;

import java.math.BigDecimal;
import java.util.stream.Stream;
import org.isopter.model.clinical.CheckRow;
import org.isopter.model.clinical.CheckTable;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

public class PrismAngleTest {

  static Stream<CheckRow> rows() {
    return CheckTable.PRISM_DEGREES.rows();
  }

  @ParameterizedTest
  @MethodSource("rows")
  void turnsPrismDioptresIntoDegreesAndBack(CheckRow row) {
    BigDecimal dioptres = new BigDecimal(row.cell("prism_dioptres"));
    BigDecimal degrees = PrismAngle.degrees(dioptres);
    assertEquals(new BigDecimal(row.cell("degrees")), degrees);
    double back = PrismAngle.prismDioptres(degrees).orThrow().doubleValue();
    assertEquals(dioptres.doubleValue(), back, 0.051);
  }

  @Test
  void hasNoPrismForARightAngle() {
    assertFalse(PrismAngle.prismDioptres(new BigDecimal("90")).isOk());
    assertFalse(PrismAngle.prismDioptres(new BigDecimal("-90")).isOk());
  }

  @Test
  void keepsTheSign() {
    assertEquals(new BigDecimal("-5.71"), PrismAngle.degrees(new BigDecimal("-10")));
  }
}
