package org.isopter.model.clinical;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.math.BigDecimal;
import java.util.Arrays;
import java.util.Locale;
import java.util.Optional;
import java.util.stream.Stream;
import org.isopter.model.clinical.fundus.CupDisc;
import org.isopter.model.clinical.fundus.FrisenGrade;
import org.isopter.model.clinical.fundus.RetinopathyLevel;
import org.isopter.model.clinical.fundus.RetinopathyLevel.MacularOedema;
import org.isopter.model.clinical.fundus.RetinopathyLevel.Signs;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

class ScalesTest {

  static Stream<CheckRow> frisen() {
    return CheckTable.FRISEN_GRADES.rows();
  }

  static Stream<CheckRow> icdr() {
    return CheckTable.ICDR_SCALE.rows();
  }

  static Stream<CheckRow> cups() {
    return CheckTable.VCDR_PERCENTILES.rows();
  }

  @ParameterizedTest
  @MethodSource("frisen")
  void keepsTheKeyFeatureOfEachGrade(CheckRow row) {
    FrisenGrade grade = FrisenGrade.of(Integer.parseInt(row.name())).orThrow();
    assertEquals(row.cell("key_feature"), grade.keyFeature());
    assertTrue(grade.statement().text().contains("papilloedema"));
  }

  @Test
  void refusesAGradeThatTheScaleDoesNotHave() {
    assertFalse(FrisenGrade.of(6).isOk());
    assertFalse(FrisenGrade.of(-1).isOk());
  }

  @ParameterizedTest
  @MethodSource("icdr")
  void keepsTheRuleOfEachLevel(CheckRow row) {
    if (row.name().equals("macular oedema")) {
      String rule = row.cell("rule").toUpperCase(Locale.ROOT);
      for (MacularOedema oedema : MacularOedema.values()) {
        String words = oedema.name().replace("APPARENTLY_", "");
        assertTrue(rule.contains("SEPARATE AXIS") && rule.contains(words), words);
      }
      return;
    }
    RetinopathyLevel level =
        Arrays.stream(RetinopathyLevel.values())
            .filter(one -> one.title().equals(row.name()))
            .findFirst()
            .orElseThrow();
    assertEquals(row.cell("rule"), level.rule());
  }

  @Test
  void derivesTheLevelFromTheSigns() {
    assertEquals(RetinopathyLevel.NONE, level(new Signs(false, false, 0, 0, 0, false)));
    assertEquals(RetinopathyLevel.MILD, level(new Signs(true, false, 0, 0, 0, false)));
    assertEquals(RetinopathyLevel.MODERATE, level(new Signs(true, true, 0, 0, 0, false)));
    assertEquals(RetinopathyLevel.MODERATE, level(new Signs(true, true, 3, 1, 0, false)));
    assertEquals(RetinopathyLevel.SEVERE, level(new Signs(true, true, 4, 0, 0, false)));
    assertEquals(RetinopathyLevel.SEVERE, level(new Signs(true, true, 0, 2, 0, false)));
    assertEquals(RetinopathyLevel.SEVERE, level(new Signs(true, true, 0, 0, 1, false)));
    assertEquals(RetinopathyLevel.PROLIFERATIVE, level(new Signs(true, true, 4, 2, 1, true)));
    assertThrows(IllegalArgumentException.class, () -> new Signs(true, true, 5, 0, 0, false));
  }

  private static RetinopathyLevel level(Signs signs) {
    return RetinopathyLevel.of(signs).value().orElseThrow();
  }

  @ParameterizedTest
  @MethodSource("cups")
  void holdsARatioAgainstTheSizeOfItsDisc(CheckRow row) {
    Optional<BigDecimal> diameter = Optional.of(new BigDecimal(row.name()));
    CupDisc.Percentiles found = CupDisc.percentiles(diameter).value().orElseThrow();
    assertEquals(row.number("vcdr_p50"), found.median().doubleValue(), 1e-9);
    assertEquals(row.number("vcdr_p97_5"), found.limit().doubleValue(), 1e-9);
    BigDecimal limit = new BigDecimal(row.cell("vcdr_p97_5"));
    assertEquals(Optional.of(false), CupDisc.isAboveLimit(limit, diameter).value());
    BigDecimal above = limit.add(new BigDecimal("0.01"));
    assertEquals(Optional.of(true), CupDisc.isAboveLimit(above, diameter).value());
  }

  @Test
  void saysNothingOfARatioWithoutTheSizeOfItsDisc() {
    BigDecimal large = new BigDecimal("0.9");
    assertFalse(CupDisc.isAboveLimit(new BigDecimal("0.75"), Optional.empty()).isGiven());
    // Crowston 2004, table 4: no limit is above 0.75.
    assertTrue(CupDisc.isAboveLimit(large, Optional.empty()).isGiven());
    assertFalse(CupDisc.isAboveLimit(large, Optional.of(new BigDecimal("2.0"))).isGiven());
    assertFalse(CupDisc.percentiles(Optional.of(new BigDecimal("1.1"))).isGiven());
    assertFalse(CupDisc.expected(new BigDecimal("1.0")).isGiven());
  }
}
