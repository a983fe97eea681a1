package org.isopter.model.clinical.colour;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.math.BigDecimal;
import java.util.Locale;
import java.util.Optional;
import java.util.stream.Stream;
import org.isopter.model.answer.sight.ColourTest;
import org.isopter.model.catalogue.Colours.Plates;
import org.isopter.model.clinical.CheckRow;
import org.isopter.model.clinical.CheckTable;
import org.isopter.model.clinical.statement.Answer;
import org.isopter.model.value.Result;
import org.isopter.model.value.Site;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

public class ColourPlatesTest {

  static Stream<CheckRow> cases() {
    return CheckTable.ISHIHARA_CASES.rows();
  }

  static Stream<CheckRow> thresholds() {
    return CheckTable.ISHIHARA_THRESHOLDS.rows();
  }

  private static Plates plates(int correct, int shown, int edition) {
    return new Plates(correct, shown, ColourTest.ISHIHARA, Optional.of(edition));
  }

  private static Optional<PlateVerdict> verdict(Plates plates, PlateRule rule) {
    return ColourPlates.verdict(plates, rule).orThrow().value();
  }

  @ParameterizedTest
  @MethodSource("cases")
  void judgesAsTheCaseExpects(CheckRow row) {
    int edition = Integer.parseInt(row.cell("edition"));
    if (row.cell("score").equals("plate 1 missed")) {
      Answer<PlateVerdict> answer = ColourPlates.firstPlateMissed(plates(20, 21, edition));
      assertFalse(answer.isGiven());
      assertTrue(
          answer.statement().text().contains("acuity, comprehension or feigning"),
          answer.statement().text());
      return;
    }
    int slash = row.cell("score").indexOf('/');
    int correct = Integer.parseInt(row.cell("score").substring(0, slash));
    Plates plates =
        plates(correct, Integer.parseInt(row.cell("score").substring(slash + 1)), edition);
    if (row.cell("expected_faa").equals("invalid")) {
      assertFalse(ColourPlates.verdict(plates, PlateRule.FAA).isOk());
      assertFalse(ColourPlates.verdict(plates, PlateRule.MANUFACTURER).isOk());
    } else {
      assertEquals(
          row.cell("expected_manufacturer"),
          verdict(plates, PlateRule.MANUFACTURER).orElseThrow().name().toLowerCase(Locale.ROOT));
      PlateVerdict faa = verdict(plates, PlateRule.FAA).orElseThrow();
      assertTrue(row.cell("expected_faa").startsWith(faa.words()), row + ": " + faa);
    }
  }

  @ParameterizedTest
  @MethodSource("thresholds")
  void keepsTheLimitsOfEachRule(CheckRow row) {
    PlateRule rule =
        row.name().startsWith("manufacturer")
            ? PlateRule.MANUFACTURER
            : row.name().startsWith("US FAA") ? PlateRule.FAA : PlateRule.CASA;
    int edition = Integer.parseInt(row.cell("edition").substring(0, 2));
    int scored = Integer.parseInt(row.cell("scored_plates").substring(2));
    assertTrue(row.isBlank("n_scored") || number(row, "n_scored") == scored, row.toString());
    assertEquals(scored, PlateEdition.of(edition).orElseThrow().scored());
    int pass = least(row, scored);
    int fail = row.isBlank("fail_max_correct") ? pass - 1 : number(row, "fail_max_correct");
    assertTrue(verdict(plates(0, scored, edition), rule).isEmpty(), "the first plate was missed");
    for (int correct = 1; correct <= scored; correct++) {
      PlateVerdict verdict = verdict(plates(correct, scored, edition), rule).orElseThrow();
      boolean good = verdict == PlateVerdict.PASS || verdict == PlateVerdict.NORMAL;
      boolean bad = verdict == PlateVerdict.FAIL || verdict == PlateVerdict.DEFICIENT;
      assertEquals(correct >= pass, good, row + ": " + correct);
      assertEquals(correct <= fail, bad, row + ": " + correct);
    }
  }

  private static int least(CheckRow row, int scored) {
    return row.isBlank("pass_min_correct")
        ? scored - number(row, "fail_min_errors") + 1
        : number(row, "pass_min_correct");
  }

  private static int number(CheckRow row, String column) {
    return Integer.parseInt(row.cell(column));
  }

  @Test
  void refusesADenominatorThatIsNotScored() {
    Result<Answer<PlateVerdict>> refused =
        ColourPlates.verdict(plates(13, 14, 14), PlateRule.MANUFACTURER);
    assertEquals(1, refused.faults().size());
    assertEquals("13 of 14", refused.faults().get(0).seen());
    assertFalse(ColourPlates.verdict(plates(12, 11, 14), PlateRule.FAA).isOk());
  }

  @Test
  void judgesNothingWithoutAnEditionOrARuleForIt() {
    Plates bare = new Plates(13, 15, ColourTest.ISHIHARA, Optional.empty());
    Plates other = new Plates(13, 15, ColourTest.HARDY_RAND_RITTLER, Optional.of(24));
    assertEquals(Optional.empty(), verdict(bare, PlateRule.FAA));
    assertEquals(Optional.empty(), verdict(other, PlateRule.FAA));
    assertEquals(Optional.empty(), verdict(plates(17, 21, 38), PlateRule.CASA));
  }

  @Test
  void comparesTheRedOfTheEyes() {
    RedSaturation half = RedSaturation.of(new BigDecimal("50"), new BigDecimal("100")).orThrow();
    assertEquals(Optional.of(Site.RIGHT), half.less());
    assertEquals(new BigDecimal("0.50"), half.ratio());
    RedSaturation alike = RedSaturation.of(new BigDecimal("90"), new BigDecimal("90")).orThrow();
    assertEquals(Optional.empty(), alike.less());
    assertFalse(RedSaturation.of(BigDecimal.ZERO, BigDecimal.ZERO).isOk());
    assertFalse(RedSaturation.of(new BigDecimal("101"), BigDecimal.TEN).isOk());
  }
}
