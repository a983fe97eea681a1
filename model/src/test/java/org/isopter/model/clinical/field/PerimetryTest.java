package org.isopter.model.clinical.field;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.math.BigDecimal;
import java.util.stream.Stream;
import org.isopter.model.clinical.CheckRow;
import org.isopter.model.clinical.CheckTable;
import org.isopter.model.clinical.statement.Answer;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

public class PerimetryTest {

  static Stream<CheckRow> rows() {
    return CheckTable.PERIMETRY_RULES.rows();
  }

  @ParameterizedTest
  @MethodSource("rows")
  void keepsEveryPublishedLimit(CheckRow row) {
    switch (row.name()) {
      case "MD" -> stagesByMeanDeviation(row);
      case "MD original HPA" -> groupsAsTheOriginal();
      case "VFI" -> checkRange(PerimetryIndex.VISUAL_FIELD_INDEX, "0", "100", "-1", "101");
      case "PSD" ->
          checkRange(PerimetryIndex.PATTERN_STANDARD_DEVIATION, "0", "15.2", "-0.1", "100");
      case "fixation loss" -> {
        checkFlag(PerimetryFlag.FIXATION_LOSSES, 20, true);
        assertTrue(flagged(PerimetryFlag.FIXATION_LOSSES, 7, 14), row.cell("expected"));
      }
      case "false positive" -> {
        checkFlag(PerimetryFlag.FALSE_POSITIVES, 15, false);
        checkFlag(PerimetryFlag.FALSE_POSITIVES_FULL_THRESHOLD, 33, true);
      }
      case "false negative" -> {
        checkFlag(PerimetryFlag.FALSE_NEGATIVES, 33, true);
        String text = PerimetryFlag.FALSE_NEGATIVES.of(40, 100).orThrow().statement().text();
        assertTrue(text.contains("rise with true loss, not only with inattention"), text);
      }
      case "threshold point" -> {
        assertTrue(high("40"));
        assertFalse(high("39.9"));
      }
      default -> throw new AssertionError(row.toString());
    }
  }

  private static void stagesByMeanDeviation(CheckRow row) {
    Answer<String> stage = FieldStage.MILLS_2006.of(new BigDecimal(row.cell("value")));
    String expected = row.cell("expected");
    String found = stage.value().orElseThrow();
    assertTrue(expected.startsWith(found), expected + ", not " + found);
    assertEquals(
        expected.contains("only if"),
        row.cell("value").equals("-0.01")
            && stage.statement().text().contains("criterion as well"));
  }

  private static void groupsAsTheOriginal() {
    assertEquals("early", original("-5.99"));
    assertEquals("moderate", original("-6"));
    assertEquals("moderate", original("-12"));
    assertEquals("severe", original("-12.01"));
    String text = FieldStage.HODAPP_1993.of(BigDecimal.ONE).statement().text();
    assertTrue(text.contains("point counts and the central 5 degrees"), text);
  }

  private static String original(String meanDeviation) {
    return FieldStage.HODAPP_1993.of(new BigDecimal(meanDeviation)).value().orElseThrow();
  }

  private static void checkRange(
      PerimetryIndex index, String least, String most, String below, String above) {
    assertTrue(index.of(new BigDecimal(least)).isOk());
    assertTrue(index.of(new BigDecimal(most)).isOk());
    assertFalse(index.of(new BigDecimal(below)).isOk());
    assertFalse(index.of(new BigDecimal(above)).isOk());
  }

  private static void checkFlag(PerimetryFlag flag, int percent, boolean included) {
    assertEquals(included, flagged(flag, percent, 100));
    assertTrue(flagged(flag, percent + 1, 100));
    assertFalse(flagged(flag, percent - 1, 100));
    assertFalse(flag.of(3, 0).isOk());
    assertFalse(flag.of(3, 2).isOk());
  }

  private static boolean flagged(PerimetryFlag flag, int errors, int trials) {
    return flag.of(errors, trials).orThrow().value().orElseThrow();
  }

  private static boolean high(String decibels) {
    return PerimetryFlag.highThreshold(new BigDecimal(decibels)).value().orElseThrow();
  }
}
