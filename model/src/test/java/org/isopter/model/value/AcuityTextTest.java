package org.isopter.model.value;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/** Notations as the trade writes them (common practice, no source, unless said). */
class AcuityTextTest {

  @ParameterizedTest
  @ValueSource(
      strings = {
        "6/9",
        "6/9-2",
        "20/40+1",
        "3/60",
        "4/8",
        "6/7.5",
        "20/12.5",
        "0.3 logMAR",
        "-0.1 logMAR",
        "0.5 decimal",
        "78 letters",
        "CF",
        "CF 1 m",
        "CF 2 ft",
        "HM",
        "HM 50 cm",
        "LP",
        "LP accurate",
        "LP inaccurate",
        "NLP",
        "N6",
        "N4.5",
        "J3",
        "J1+",
        "0.8 M",
        "NI",
        "6/20 m",
        "5/200 ft"
      })
  void givesBackWhatTheTradeWrites(String text) {
    Acuity acuity = AcuityText.parse(text).orThrow();
    assertEquals(text, acuity.toString());
    assertTrue(text.matches(AcuityText.PATTERN));
  }

  @ParameterizedTest
  @CsvSource({"6/6,m", "20/20,ft", "4/4,m", "3/60,m", "20/200,ft"})
  void knowsTheUnitOfAUsualFraction(String text, String unit) {
    // DICOM PS3.17 Annex RR: the 6 is metres, the 20 is feet.
    Acuity.Fraction fraction = (Acuity.Fraction) AcuityText.parse(text).orThrow();
    assertEquals(unit, fraction.unit().text());
  }

  @ParameterizedTest
  @ValueSource(strings = {"0.5", "85", "1.0", "-0.1", "1"})
  void refusesABareNumberAndNamesTheNotations(String text) {
    Fault fault = AcuityText.parse(text).faults().get(0);
    assertTrue(fault.wanted().contains("logMAR") && fault.wanted().contains("decimal"));
    assertTrue(fault.advice().contains("bare number"));
  }

  @ParameterizedTest
  @ValueSource(strings = {"6/20", "20/6", "6/200", "5/200", "10/200", "0/6", "6/40-1"})
  void refusesAFractionThatMayMixMetresAndFeet(String text) {
    assertFalse(AcuityText.parse(text).isOk());
  }

  @Test
  void takesAnUnusualFractionThatTheTestingDistanceExplains() {
    Quantity six = Quantity.of("6", Unit.METRE);
    Acuity read = AcuityText.parse("6/20", Optional.of(six)).orThrow();
    assertEquals("6/20 m", read.toString());
  }

  @ParameterizedTest
  @ValueSource(strings = {"", "6/", "/9", "6/9-", "6/9 -22", "CF1", "six", "N", "J21", "6/9 yd"})
  void refusesWhatIsNoNotation(String text) {
    Fault fault = AcuityText.parse(text).faults().get(0);
    assertEquals("\"" + text + "\"", fault.seen());
  }

  @Test
  void doesNotMindCaseOrSpacesAround() {
    assertEquals("CF 1 m", AcuityText.parse(" cf 1 M ").orThrow().toString());
    assertEquals("0.3 logMAR", AcuityText.parse("0.3 LOGMAR").orThrow().toString());
  }
}
