package org.isopter.model.clinical.impairment;

import static org.isopter.model.clinical.acuity.AcuityCasesTest.reading;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.math.BigDecimal;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.stream.Stream;
import org.isopter.model.answer.sight.Correction;
import org.isopter.model.catalogue.AcuityReading;
import org.isopter.model.clinical.CheckRow;
import org.isopter.model.clinical.CheckTable;
import org.isopter.model.clinical.impairment.VisionImpairments.Category;
import org.isopter.model.clinical.statement.Answer;
import org.isopter.model.value.Quantity;
import org.isopter.model.value.Unit;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

public class VisionImpairmentsTest {

  static Stream<CheckRow> cases() {
    return CheckTable.ICD11_CASES.rows();
  }

  static Stream<CheckRow> categories() {
    return CheckTable.ICD11_VISION_IMPAIRMENT.rows();
  }

  @ParameterizedTest
  @MethodSource("cases")
  void classifiesAsTheCaseExpects(CheckRow row) {
    String expected = row.cell("expected");
    switch (row.name()) {
      case "RE 6/6, LE NLP" -> {
        assertEquals(Optional.of(VisionImpairment.NONE), person("6/6", "NLP"));
        assertEquals(VisionImpairment.BLINDNESS_NO_LIGHT, eye("NLP").impairment());
      }
      case "RE 6/18 unaided, 6/6 with glasses worn" -> classifiesWhatWasWorn();
      case "CF, no distance" -> {
        Answer<Category> answer = VisionImpairments.of(reading("CF"));
        assertFalse(answer.isGiven());
        // The case prints "blindness likely"; nothing is likely of what was not measured.
        assertFalse(answer.statement().text().contains("likely"));
        assertTrue(answer.statement().text().contains("distance"));
      }
      case "decimal 0.3" -> assertEquals(expected, words(eye("0.3 decimal")));
      default -> classifiesTheEye(row, expected);
    }
  }

  private static void classifiesTheEye(CheckRow row, String expected) {
    Category category = eye(row.name().replace(" at ", " "));
    assertTrue(expected.startsWith(words(category)), row + ": " + category);
    assertEquals(row.cell("why").contains("borderline"), category.borderline(), row.toString());
  }

  private static void classifiesWhatWasWorn() {
    List<AcuityReading> right =
        List.of(
            reading("6/18").through(Correction.UNAIDED),
            reading("6/6").through(Correction.SPECTACLES));
    PersonImpairment person = new PersonImpairment(right, right, List.of());
    assertEquals(VisionImpairment.NONE, person.category().value().orElseThrow().impairment());
  }

  private static String words(Category category) {
    VisionImpairment found = category.impairment();
    if (found == VisionImpairment.NONE) {
      return "no impairment";
    }
    return found.number() < 4 ? found.title() : "blindness (cat " + found.number() + ")";
  }

  @ParameterizedTest
  @MethodSource("categories")
  void putsEachPrintedEdgeInItsCategory(CheckRow row) {
    switch (row.name()) {
      case "near" -> checkNear();
      case "field" -> checkField();
      default -> checkCategory(row);
    }
  }

  private static void checkCategory(CheckRow row) {
    VisionImpairment category = numbered(Integer.parseInt(row.name()));
    assertEquals(row.cell("name"), category.title());
    checkEdge(row, "equal_or_better_than", "", category);
    checkEdge(row, "logmar_limit_inclusive", " logMAR", category);
    checkEdge(row, "decimal_limit_inclusive", " decimal", category);
    checkEdge(row, "imperial_limit_inclusive", " ft", category);
    checkEdge(row, "m4_limit_inclusive", " m", category);
  }

  private static VisionImpairment numbered(int number) {
    return Arrays.stream(VisionImpairment.values())
        .filter(one -> one.number() == number)
        .findFirst()
        .orElseThrow();
  }

  private static void checkEdge(
      CheckRow row, String column, String unit, VisionImpairment category) {
    String cell = row.cell(column);
    String first = cell.replaceFirst(" \\(.*", "").replace("5/300", "20/1200");
    if (first.equals("light perception")) {
      assertEquals(category, eye("LP").impairment());
    } else if (first.equals("no light perception") || row.name().equals("6")) {
      assertEquals(category, eye("NLP").impairment());
    } else if (!first.isBlank()) {
      assertEquals(category, eye(first + unit).impairment(), row + " " + column);
    }
  }

  private static void checkNear() {
    assertEquals(Optional.of(false), near("N6", "40"));
    assertEquals(Optional.of(true), near("N8", "40"));
    assertEquals(Optional.of(false), near("0.8 M", "40"));
    assertEquals(Optional.of(true), near("1.0 M", "40"));
    assertEquals(Optional.empty(), near("N6", "33"));
    assertEquals(Optional.empty(), near("J3", "40"));
    assertFalse(VisionImpairments.near(reading("N6")).isGiven());
  }

  private static Optional<Boolean> near(String text, String centimetres) {
    Quantity distance = Quantity.of(centimetres, Unit.CENTIMETRE);
    return VisionImpairments.near(reading(text).from(distance)).value();
  }

  private static void checkField() {
    Category narrow = VisionImpairments.ofField(BigDecimal.TEN).value().orElseThrow();
    assertEquals(3, narrow.impairment().icd10());
    assertFalse(VisionImpairments.ofField(BigDecimal.valueOf(11)).isGiven());
  }

  @Test
  void neverBecomesLessImpairedAsAFractionFalls() {
    for (String unit : List.of(" m", " ft", " decimal", " logMAR")) {
      int before = 0;
      for (int step = -30; step <= 230; step++) {
        int number = eye(text(step / 100.0, unit)).impairment().number();
        assertTrue(number >= before, step + unit);
        before = number;
      }
    }
  }

  private static String text(double logMar, String unit) {
    return switch (unit) {
      case " m" -> String.format(Locale.ROOT, "6/%.4f m", 6 * Math.pow(10, logMar));
      case " ft" -> String.format(Locale.ROOT, "20/%.4f ft", 20 * Math.pow(10, logMar));
      case " decimal" -> String.format(Locale.ROOT, "%.6f decimal", Math.pow(10, -logMar));
      default -> String.format(Locale.ROOT, "%.2f logMAR", logMar);
    };
  }

  @Test
  void takesTheBetterEyeEvenWhereTheWorseHasNoCategory() {
    assertEquals(Optional.of(VisionImpairment.MODERATE), person("6/24", "CF"));
    assertEquals(Optional.empty(), person("CF", "CF"));
  }

  @Test
  void takesBothEyesOpenWhereTested() {
    PersonImpairment person =
        new PersonImpairment(
            List.of(reading("6/60")), List.of(reading("6/60")), List.of(reading("6/12")));
    assertEquals(VisionImpairment.NONE, person.category().value().orElseThrow().impairment());
  }

  @Test
  void leavesOpenWhatOneEyeDoesNotSettle() {
    assertFalse(one("6/24").category().isGiven());
    assertEquals(VisionImpairment.NONE, one("6/6").category().value().orElseThrow().impairment());
  }

  @Test
  void neverTakesTrialLensesForWhatThePersonCameWith() {
    List<AcuityReading> trial = List.of(reading("6/6").through(Correction.TRIAL_LENSES));
    assertFalse(PresentingAcuity.of(trial).isGiven());
    assertFalse(new PersonImpairment(trial, trial, List.of()).category().isGiven());
  }

  private static PersonImpairment one(String right) {
    return new PersonImpairment(List.of(reading(right)), List.of(), List.of());
  }

  private static Optional<VisionImpairment> person(String right, String left) {
    return new PersonImpairment(List.of(reading(right)), List.of(reading(left)), List.of())
        .category()
        .value()
        .map(Category::impairment);
  }

  private static Category eye(String text) {
    return VisionImpairments.of(reading(text)).value().orElseThrow();
  }
}
