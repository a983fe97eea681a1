package org.isopter.model.clinical.impairment;

import static org.isopter.model.clinical.acuity.AcuityCasesTest.reading;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.math.BigDecimal;
import java.util.Optional;
import java.util.stream.Stream;
import org.isopter.model.clinical.CheckRow;
import org.isopter.model.clinical.CheckTable;
import org.isopter.model.clinical.acuity.VisualAngle;
import org.isopter.model.clinical.impairment.DrivingVision.Extent;
import org.isopter.model.clinical.impairment.DrivingVision.FieldRule;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

public class DrivingVisionTest {

  static Stream<CheckRow> rows() {
    return CheckTable.DRIVING_VISION.rows();
  }

  @ParameterizedTest
  @MethodSource("rows")
  void reachesWhatTheRuleSetPrintsAndNoLess(CheckRow row) {
    switch (row.name()) {
      case "UK group 1" -> checkBoth(DrivingRule.UK_GROUP_1, row.cell("threshold"), "6/15");
      case "EU group 1" -> {
        checkBoth(DrivingRule.EU_GROUP_1, row.cell("threshold") + " decimal", "0.4 decimal");
        checkEuropeanField();
      }
      case "US most states" ->
          checkBoth(DrivingRule.US_MOST_STATES, row.cell("threshold"), "20/50");
      case "UK group 2" -> checkEach(DrivingRule.UK_GROUP_2, "6/7.5", "6/60", "6/9", "5/60");
      case "EU group 2" -> {
        assertEquals("0.8 / 0.1", row.cell("threshold"));
        checkEach(DrivingRule.EU_GROUP_2, "0.8 decimal", "0.1 decimal", "6/9", "5/60");
        checkEach(
            DrivingRule.EU_GROUP_2_BEFORE_2009, "0.8 decimal", "0.5 decimal", "6/9", "0.1 decimal");
      }
      case "UK group 1 field" -> checkBritishField();
      case "number plate geometry" -> keepsThePlateApart(row);
      default -> throw new AssertionError(row.toString());
    }
  }

  private static void checkBoth(DrivingRule rule, String enough, String less) {
    assertEquals(Optional.of(true), DrivingVision.acuity(rule, reading(enough)).value());
    assertEquals(Optional.of(false), DrivingVision.acuity(rule, reading(less)).value());
    assertEquals(Optional.of(false), DrivingVision.acuity(rule, reading("CF 1 m")).value());
    assertFalse(DrivingVision.acuity(rule, reading("6/12-1")).isGiven());
    assertFalse(DrivingVision.acuity(rule, reading("N6")).isGiven());
  }

  private static void checkEach(
      DrivingRule rule, String better, String worse, String tooLittle, String tooLow) {
    assertEquals(Optional.of(true), each(rule, better, worse));
    assertEquals(Optional.of(false), each(rule, tooLittle, worse));
    assertEquals(Optional.of(false), each(rule, better, tooLow));
    assertFalse(DrivingVision.acuity(rule, reading(better)).isGiven());
  }

  private static Optional<Boolean> each(DrivingRule rule, String better, String worse) {
    return DrivingVision.acuity(rule, reading(better), reading(worse)).value();
  }

  private static void checkBritishField() {
    assertTrue(field(FieldRule.UK_GROUP_1, new Extent(120, 50, 70, 0, 0, false)));
    assertFalse(field(FieldRule.UK_GROUP_1, new Extent(119, 50, 69, 0, 0, false)));
    assertFalse(field(FieldRule.UK_GROUP_1, new Extent(120, 49, 71, 0, 0, false)));
    assertFalse(field(FieldRule.UK_GROUP_1, new Extent(110, 50, 60, 0, 0, true)));
    Extent wideWithDefect = new Extent(159, 80, 79, 30, 30, true);
    assertFalse(DrivingVision.field(FieldRule.UK_GROUP_1, wideWithDefect).isGiven());
  }

  private static void checkEuropeanField() {
    assertTrue(field(FieldRule.EU_GROUP_1, new Extent(120, 50, 70, 20, 20, false)));
    assertFalse(field(FieldRule.EU_GROUP_1, new Extent(120, 50, 70, 19, 20, false)));
    assertFalse(field(FieldRule.EU_GROUP_1, new Extent(120, 50, 70, 20, 20, true)));
  }

  private static boolean field(FieldRule rule, Extent extent) {
    return DrivingVision.field(rule, extent).value().orElseThrow();
  }

  /** The two tests of the rule print figures that disagree; neither is derived from the other. */
  private static void keepsThePlateApart(CheckRow row) {
    assertTrue(row.cell("threshold").startsWith("79 mm at 20 m = 13.6 arcmin"));
    BigDecimal plate = VisualAngle.minutes(79, 20_000);
    assertEquals(new BigDecimal("13.6"), plate);
    double logMar = Math.log10(plate.doubleValue() / 5);
    assertEquals(Math.log10(16 / 6.0), logMar, 0.012);
  }

  @Test
  void alwaysSaysToCheckLocalRules() {
    for (DrivingRule rule : DrivingRule.values()) {
      for (String text : new String[] {"6/6", "6/60", "N6"}) {
        String both = DrivingVision.acuity(rule, reading(text)).statement().text();
        String each = DrivingVision.acuity(rule, reading(text), reading(text)).statement().text();
        assertTrue(both.contains("Check local rules"), both);
        assertTrue(each.contains("Check local rules"), each);
      }
    }
  }
}
