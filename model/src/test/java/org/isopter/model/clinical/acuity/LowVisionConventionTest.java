package org.isopter.model.clinical.acuity;

import static org.isopter.model.clinical.acuity.AcuityEquivalentsTest.read;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.math.BigDecimal;
import java.util.Arrays;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Stream;
import org.isopter.model.clinical.CheckRow;
import org.isopter.model.clinical.CheckTable;
import org.isopter.model.value.Acuity;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

public class LowVisionConventionTest {

  private static final Map<String, LowVisionConvention> BY_SOURCE =
      Map.of(
          "Schulze-Bonsel 2006", LowVisionConvention.SCHULZE_BONSEL_2006,
          "Lange", LowVisionConvention.LANGE_2009,
          "Holladay", LowVisionConvention.HOLLADAY_2004,
          "ICD-10 H54", LowVisionConvention.WHO);

  static Stream<CheckRow> rows() {
    return CheckTable.OFFCHART_ACUITY.rows();
  }

  @ParameterizedTest
  @MethodSource("rows")
  void givesANumberOnlyUnderItsConvention(CheckRow row) {
    Acuity.Low low = low(row);
    boolean angle = !row.isBlank("logmar") && !row.name().endsWith("LP");
    if (!angle) {
      assertTrue(conventions().noneMatch(one -> one.logMar(low).isGiven()), row.toString());
      assertTrue(isQuoted(row, low), row.toString());
      return;
    }
    LowVisionConvention named = named(row).orElseThrow();
    assertEquals(new BigDecimal(row.cell("logmar")), named.logMar(low).value().orElseThrow());
    assertTrue(
        conventions().filter(one -> one != named).noneMatch(one -> same(one, low, row)),
        "another convention says the same of another distance");
  }

  private static boolean same(LowVisionConvention other, Acuity.Low low, CheckRow row) {
    return other.logMar(low).value().equals(Optional.of(new BigDecimal(row.cell("logmar"))));
  }

  /** What a survey or a trial puts in for light perception or none is quoted, never derived. */
  private static boolean isQuoted(CheckRow row, Acuity.Low low) {
    return row.isBlank("logmar")
        || conventions()
            .map(one -> one.logMar(low).statement().text())
            .anyMatch(text -> text.contains(row.cell("logmar")) && text.contains("stand-in"));
  }

  private static Stream<LowVisionConvention> conventions() {
    return Arrays.stream(LowVisionConvention.values());
  }

  private static Optional<LowVisionConvention> named(CheckRow row) {
    return BY_SOURCE.entrySet().stream()
        .filter(entry -> row.cell("source").contains(entry.getKey()))
        .map(Map.Entry::getValue)
        .findFirst();
  }

  private static Acuity.Low low(CheckRow row) {
    String distance =
        row.cell("distance").replace(" screen test", "").replace("unspecified", "").strip();
    return (Acuity.Low) read((row.name() + " " + distance).strip());
  }

  @Test
  void answersOnlyForTheDistanceItWasPublishedFor() {
    assertFalse(
        LowVisionConvention.SCHULZE_BONSEL_2006.logMar((Acuity.Low) read("CF 1 m")).isGiven());
    assertTrue(
        LowVisionConvention.SCHULZE_BONSEL_2006.logMar((Acuity.Low) read("CF 0.3 m")).isGiven());
  }
}
