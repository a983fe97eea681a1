package org.isopter.model.clinical.acuity;

import static org.isopter.model.clinical.acuity.AcuityEquivalentsTest.read;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.math.BigDecimal;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.stream.Stream;
import org.isopter.model.answer.sight.Correction;
import org.isopter.model.catalogue.AcuityReading;
import org.isopter.model.clinical.CheckRow;
import org.isopter.model.clinical.CheckTable;
import org.isopter.model.clinical.statement.Answer;
import org.isopter.model.value.Acuity;
import org.isopter.model.value.AcuityText;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

public class AcuityCasesTest {

  static Stream<CheckRow> cases() {
    return CheckTable.ACUITY_CASES.rows();
  }

  public static AcuityReading reading(String text) {
    return AcuityReading.of(read(text));
  }

  private static AcuityReading fiveLetters(String text) {
    return new AcuityReading(
        read(text), Optional.empty(), Optional.empty(), Optional.empty(), Optional.of(5));
  }

  @ParameterizedTest
  @MethodSource("cases")
  void behavesAsTheCaseExpects(CheckRow row) {
    switch (row.cell("context")) {
      case "notation not stated", "mixed?" -> refusesUnlessExplained(row);
      case "averaging" -> averages(row);
      case "change, ETDRS, one eye" -> callsItNoChange(row, "0.60 logMAR", "0.68 logMAR");
      case "change" -> callsOneLineNoChangeAndFourOne();
      case "ETDRS 5 letters/line" -> countsLetters(row);
      default -> convertsTheFullLine(row);
    }
  }

  private static void refusesUnlessExplained(CheckRow row) {
    String text = row.cell("input");
    assertFalse(AcuityText.parse(text).isOk(), text);
    if (text.contains("/")) {
      Acuity.Fraction line = (Acuity.Fraction) read(text + " m");
      assertTrue(UnusualLine.remark(line).isPresent(), text);
    }
    if (!row.isBlank("expected_logmar")) {
      BigDecimal logMar = PartialLine.logMar(reading(text + " m")).value().orElseThrow();
      assertEquals(new BigDecimal(row.cell("expected_logmar")), logMar);
    }
  }

  private static void averages(CheckRow row) {
    assertEquals("mean of 20/20 and 20/200", row.name());
    Answer<BigDecimal> mean = AcuityEquivalents.mean(List.of(read("20/20"), read("20/200")));
    assertEquals(new BigDecimal(row.cell("expected_logmar")), mean.value().orElseThrow());
  }

  private static void callsItNoChange(CheckRow row, String earlier, String later) {
    assertEquals("0.60 -> 0.68 logMAR", row.name());
    for (RetestLimit limit :
        List.of(
            RetestLimit.LETTERS_IN_FOCUS,
            RetestLimit.LETTERS_HALF_DIOPTRE,
            RetestLimit.LETTERS_ONE_DIOPTRE)) {
      assertEquals(AcuityChange.Verdict.WITHIN_RETEST, change(earlier, later, limit), limit.name());
      assertTrue(row.cell("source").contains(limit.least().toString()), limit.name());
    }
  }

  private static void callsOneLineNoChangeAndFourOne() {
    for (CheckRow line : CheckTable.ACUITY_EQUIVALENTS.all()) {
      if (line.cell("family").equals("logMAR step")) {
        double nominal = line.number("logmar_nominal");
        String next = String.format(Locale.ROOT, "%.2f logMAR", nominal + 0.1);
        assertEquals(
            AcuityChange.Verdict.WITHIN_RETEST,
            change(line.cell("metric_6m") + " m", next, RetestLimit.LINES));
        String beyond = String.format(Locale.ROOT, "%.2f logMAR", nominal + 0.34);
        assertEquals(
            AcuityChange.Verdict.WORSE,
            change(line.cell("imperial_20ft") + " ft", beyond, RetestLimit.LINES));
      }
    }
  }

  private static AcuityChange.Verdict change(String earlier, String later, RetestLimit limit) {
    return AcuityChange.between(reading(earlier), reading(later), limit).value().orElseThrow();
  }

  private static void countsLetters(CheckRow row) {
    BigDecimal logMar = PartialLine.logMar(fiveLetters(row.cell("input"))).value().orElseThrow();
    assertEquals(new BigDecimal(row.cell("expected_logmar")), logMar);
    assertEquals(row.number("expected_letters"), 85 - 50 * logMar.doubleValue(), 1e-9);
    assertFalse(PartialLine.logMar(reading(row.cell("input"))).isGiven());
  }

  private static void convertsTheFullLine(CheckRow row) {
    Acuity acuity = row.name().equals("-0.1") ? read("-0.1 logMAR") : read(row.name());
    AcuityEquivalents.Equivalents same = AcuityEquivalents.of(acuity).value().orElseThrow();
    assertEquals(new BigDecimal(row.cell("expected_logmar")), same.logMar());
    if (!row.isBlank("expected_letters")) {
      assertEquals(Integer.parseInt(row.cell("expected_letters")), same.letters().orElseThrow());
    }
    boolean suffix = !row.isBlank("modifier");
    assertEquals(!suffix, PartialLine.logMar(AcuityReading.of(acuity)).isGiven());
    assertTrue(acuity.toString().endsWith(row.cell("modifier")));
  }

  @Test
  void neverPutsALineWithLettersMoreBeforeTheNextLine() {
    assertFalse(AcuityComparison.compare(reading("6/6+5"), reading("6/5")).isGiven());
    assertFalse(AcuityComparison.compare(reading("6/6+4"), reading("6/5-4")).isGiven());
  }

  @Test
  void ordersByTheLettersOfOneLineWithoutCountingThem() {
    assertEquals(AcuityOrder.BETTER, order("6/9-1", "6/9-2"));
    assertEquals(AcuityOrder.WORSE, order("6/9-1", "6/9"));
    assertEquals(AcuityOrder.EQUAL, order("6/9-1", "6/9-1"));
  }

  @Test
  void ordersFarLinesWhateverTheirSuffixes() {
    assertEquals(AcuityOrder.BETTER, order("6/6-3", "6/60+3"));
    assertEquals(AcuityOrder.EQUAL, order("6/9.5", "20/32"));
    assertEquals(AcuityOrder.BETTER, order("-0.1 logMAR", "6/6"));
    assertEquals(AcuityOrder.BETTER, order("6/6+1", "6/9-1"));
  }

  @Test
  void ordersLowVisionByCategoryAndDistance() {
    List<String> falling = List.of("6/60", "CF 1 m", "CF 30 cm", "HM", "LP", "NLP");
    for (int better = 0; better < falling.size(); better++) {
      for (int worse = better + 1; worse < falling.size(); worse++) {
        assertEquals(AcuityOrder.BETTER, order(falling.get(better), falling.get(worse)));
        assertEquals(AcuityOrder.WORSE, order(falling.get(worse), falling.get(better)));
      }
    }
    assertEquals(AcuityOrder.EQUAL, order("CF 1 m", "CF 100 cm"));
  }

  @Test
  void leavesOpenWhatCannotBeOrdered() {
    assertFalse(compare("CF", "CF 1 m").isGiven());
    assertFalse(compare("LP", "LP accurate").isGiven());
    assertFalse(compare("3/60", "CF 3 m").isGiven());
    assertFalse(compare("N6", "6/9").isGiven());
    assertFalse(compare("1/60", "CF 1 m").isGiven());
  }

  @Test
  void isAntisymmetricOverAllPairs() {
    List<String> all =
        List.of(
            "6/5",
            "6/6",
            "6/6+5",
            "6/6-1",
            "6/9",
            "6/60",
            "3/60",
            "20/40",
            "0.5 decimal",
            "0.3 logMAR",
            "85 letters",
            "CF",
            "CF 1 m",
            "HM",
            "LP",
            "LP accurate",
            "NLP",
            "N6");
    for (String one : all) {
      for (String two : all) {
        assertEquals(
            compare(one, two).value(),
            compare(two, one).value().map(AcuityOrder::reversed),
            one + " and " + two);
      }
    }
  }

  @Test
  void worksALetterOutFromTheLettersOfALine() {
    AcuityReading four =
        new AcuityReading(
            read("6/12-1"), Optional.empty(), Optional.empty(), Optional.empty(), Optional.of(4));
    assertEquals(new BigDecimal("0.325"), PartialLine.logMar(four).value().orElseThrow());
    assertFalse(PartialLine.logMar(fiveLetters("6/9-2")).isGiven(), "6/9 is no 0.1 line");
    assertFalse(PartialLine.logMar(fiveLetters("6/12-5")).isGiven(), "that is the line before");
  }

  @Test
  void seesChangeOnlyBeyondTheLimitOfTheReader() {
    assertEquals(
        AcuityChange.Verdict.WORSE, change("6/6", "6/12", RetestLimit.LETTERS_ONE_DIOPTRE));
    assertEquals(AcuityChange.Verdict.BETTER, change("6/60", "6/6-2", RetestLimit.LINES));
    assertFalse(
        AcuityChange.between(reading("6/9-2"), reading("6/12+1"), RetestLimit.LINES).isGiven());
    assertFalse(
        AcuityChange.between(
                reading("6/60").through(Correction.UNAIDED),
                reading("6/6").through(Correction.SPECTACLES),
                RetestLimit.LINES)
            .isGiven());
  }

  @Test
  void saysWhatAPinholeDid() {
    assertEquals(PinholeComparison.Effect.IMPROVED, pinhole("6/18", "6/9"));
    assertEquals(PinholeComparison.Effect.IMPROVED, pinhole("CF 1 m", "6/36"));
    assertEquals(PinholeComparison.Effect.NOT_IMPROVED, pinhole("6/18", "6/18"));
    assertEquals(PinholeComparison.Effect.NOT_IMPROVED, pinhole("6/18", "NI"));
    assertEquals(PinholeComparison.Effect.WORSE, pinhole("6/18", "6/24"));
    assertFalse(PinholeComparison.of(reading("CF"), reading("CF 1 m")).isGiven());
    assertFalse(
        PinholeComparison.of(
                reading("6/18").through(Correction.UNAIDED),
                reading("6/9").through(Correction.SPECTACLES))
            .isGiven());
  }

  private static PinholeComparison.Effect pinhole(String without, String through) {
    return PinholeComparison.of(reading(without), reading(through)).value().orElseThrow();
  }

  private static Answer<AcuityOrder> compare(String first, String second) {
    return AcuityComparison.compare(reading(first), reading(second));
  }

  private static AcuityOrder order(String first, String second) {
    return compare(first, second).value().orElseThrow();
  }
}
