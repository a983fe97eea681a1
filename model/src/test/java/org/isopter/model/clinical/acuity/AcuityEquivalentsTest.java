package org.isopter.model.clinical.acuity;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.math.BigDecimal;
import java.util.List;
import java.util.OptionalInt;
import java.util.stream.Stream;
import org.isopter.model.clinical.CheckRow;
import org.isopter.model.clinical.CheckTable;
import org.isopter.model.value.Acuity;
import org.isopter.model.value.AcuityText;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

public class AcuityEquivalentsTest {

  static Stream<CheckRow> equivalents() {
    return CheckTable.ACUITY_EQUIVALENTS.rows();
  }

  static Stream<CheckRow> dicomRows() {
    return CheckTable.DICOM_RR1_ROWS.rows();
  }

  public static Acuity read(String text) {
    return AcuityText.parse(text).orThrow();
  }

  private static AcuityEquivalents.Equivalents same(String text) {
    return AcuityEquivalents.of(read(text)).value().orElseThrow();
  }

  @ParameterizedTest
  @MethodSource("equivalents")
  void derivesTheAngleFromEachFraction(CheckRow row) {
    checkFraction(row, "metric_6m", "logmar_from_metric", " m");
    checkFraction(row, "imperial_20ft", "logmar_from_imperial", " ft");
    checkFraction(row, "at_4m", "logmar_from_4m", " m");
  }

  private static void checkFraction(CheckRow row, String fraction, String logMar, String unit) {
    if (!row.isBlank(fraction)) {
      AcuityEquivalents.Equivalents same = same(row.cell(fraction) + unit);
      assertEquals(new BigDecimal(row.cell(logMar)), same.logMar(), row + " " + fraction);
      assertEquals(score(row, "vas_100_minus_50L"), same.vas(), row + " " + fraction);
      assertEquals(score(row, "etdrs_letters_85_minus_50L"), same.letters(), row + " " + fraction);
    }
  }

  private static OptionalInt score(CheckRow row, String column) {
    return row.isBlank(column)
        ? OptionalInt.empty()
        : OptionalInt.of(Integer.parseInt(row.cell(column)));
  }

  @ParameterizedTest
  @MethodSource("equivalents")
  void snapsRoundedNamesToTheirLineAndNoOthers(CheckRow row) {
    double exact = same(row.cell("metric_6m") + " m").logMar().doubleValue();
    if (row.cell("family").equals("logMAR step")) {
      NominalLine line = NominalLine.near(exact).orElseThrow();
      assertEquals(0, line.logMar().compareTo(new BigDecimal(row.cell("logmar_nominal"))));
      assertEquals(0, line.decimal().compareTo(new BigDecimal(row.cell("decimal_nominal"))));
    } else {
      assertEquals(row.number("logmar_nominal"), exact, 0.0051);
      assertEquals(row.number("decimal_nominal"), Math.pow(10, -exact), 0.006);
    }
  }

  @ParameterizedTest
  @MethodSource("dicomRows")
  void agreesWithTheTableOfDicom(CheckRow row) {
    AcuityEquivalents.Equivalents same = same(row.cell("storage_decimal") + " decimal");
    assertEquals(new BigDecimal(row.cell("exact_logmar_of_storage")), same.logMar());
    assertEquals(row.number("logmar"), same.logMar().doubleValue(), 0.01);
    assertEquals(score(row, "vas"), same.vas());
    checkDisplay(row, "display_decimal", " decimal");
    checkDisplay(row, "us", " ft");
    checkDisplay(row, "metric", " m");
  }

  private static void checkDisplay(CheckRow row, String column, String unit) {
    boolean misprint = column.equals("metric") && row.cell("note").startsWith("MISPRINT");
    if (!row.isBlank(column)) {
      double logMar = same(row.cell(column) + unit).logMar().doubleValue();
      assertEquals(misprint ? 1.041 : row.number("logmar"), logMar, 0.012, row + " " + column);
    }
  }

  @Test
  void readsTheMisprintedLineOfDicomAsWhatItSays() {
    assertEquals(new BigDecimal("1.041"), same("6/66 m").logMar());
    assertEquals(0.04, same("6/6.6 m").logMar().doubleValue(), 0.012);
  }

  @Test
  void doesNotSnapBetweenLines() {
    assertTrue(NominalLine.near(0.176).isEmpty());
    assertTrue(NominalLine.near(0.0121).isEmpty());
    assertTrue(NominalLine.near(0.0119).isPresent());
  }

  @Test
  void goesFromEveryNotationToTheSameAngle() {
    for (String text : List.of("6/12", "20/40", "0.5 decimal", "0.301 logMAR")) {
      assertEquals(new BigDecimal("0.301"), same(text).logMar(), text);
      assertEquals(new BigDecimal("2.000"), same(text).minutes(), text);
      assertEquals(0.5, same(text).decimal().doubleValue(), 0.0002, text);
    }
    assertEquals(new BigDecimal("0.300"), same("70 letters").logMar());
  }

  @Test
  void neverRoundTripsAwayFromALetterScore() {
    for (int letters = 0; letters <= 100; letters++) {
      Acuity.LogMar logMar = new Acuity.LogMar(same(letters + " letters").logMar());
      assertEquals(
          OptionalInt.of(letters), AcuityEquivalents.of(logMar).value().orElseThrow().letters());
    }
  }

  @Test
  void derivesNothingFromWhatIsNoAngle() {
    for (String text : List.of("CF 1 m", "HM", "LP", "NLP", "N6", "J3", "0.8 M", "NI")) {
      assertFalse(AcuityEquivalents.of(read(text)).isGiven(), text);
    }
    assertFalse(AcuityEquivalents.of(new Acuity.DecimalFraction(BigDecimal.ZERO)).isGiven());
  }
}
