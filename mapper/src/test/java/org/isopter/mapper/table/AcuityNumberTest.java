package org.isopter.mapper.table;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.Map;
import java.util.SplittableRandom;
import org.isopter.mapper.record.RecordFormat;
import org.isopter.mapper.record.RecordReader;
import org.isopter.model.catalogue.Catalogue;
import org.isopter.model.exam.Exam;
import org.isopter.model.exam.ExamSampler;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** No acuity lacks a number without a reason, and no assumption stands as the number. */
class AcuityNumberTest {

  private static final String RECORD =
      """
      {"isopter":1,"record":{"id":"r-1"},"subject":{"id":"p-1"},\
      "performed":"2026-03-03T09:10:00Z","status":"final","findings":{%s}}""";

  /**
   * 6/9 is log10(1.5) = 0.176. A letter of five on a line is 0.02 logMAR (Bailey and Lovie 1976,
   * from memory); hand movements are 2.30 by Schulze-Bonsel 2006, IOVS 47:1236.
   */
  @ParameterizedTest
  @CsvSource({
    "6/9, 0.176, 0.176, , recorded, ",
    "6/9-2, , 0.176, 0.216, five-letters-assumed, ",
    "6/9+2, , 0.176, 0.136, five-letters-assumed, ",
    "6/9-5, , 0.176, , letters-not-counted, ",
    "HM, , , 2.3, schulze-bonsel-2006, 2",
    "LP, , , , too-low, 3",
    "NLP, , , , too-low, 4"
  })
  void eachAcuityHasItsNumberOrAReason(
      String value, Double number, Double line, Double assumed, String rule, Long rank) {
    Map<String, Object> cells =
        value("\"distance-acuity\":{\"right\":{\"value\":\"" + value + "\"}}");
    assertEquals(number, cells.get("number"));
    assertEquals(line, cells.get("number_line"));
    assertEquals(assumed, cells.get("number_assumed"));
    assertEquals(rule, cells.get("number_rule"));
    assertEquals(rank, cells.get("low_vision_rank"));
  }

  /**
   * A card for near states an angle for its own distance, which is not that of the reading: the
   * number is an assumption. A chart of eight letters on a line has none of 0.02 logMAR.
   */
  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "near-acuity|0.2 logMAR\"|0.2|0.2|distance-of-card-assumed",
        "near-acuity|0.5 decimal\"|0.301|0.301|distance-of-card-assumed",
        "near-acuity|20/40\"|0.301|0.301|distance-of-card-assumed",
        "near-acuity|20/40-2\"|0.301||letters-not-counted",
        "near-acuity|N5\"|||size-of-print",
        "near-acuity|J3\",\"distance\":\"40 cm|||size-of-print",
        "near-acuity|N8\",\"distance\":\"1 m||0.0|eight-points-assumed",
        "near-acuity|N8\",\"distance\":\"40 cm||0.398|eight-points-assumed",
        "near-acuity|N6\",\"distance\":\"40 cm||0.273|eight-points-assumed",
        "near-acuity|N5\",\"distance\":\"33 cm||0.277|eight-points-assumed",
        "distance-acuity|6/9-2\",\"letters-per-line\":8|0.176||letters-not-counted",
        "acuity-beyond-line|6/60\",\"side-of-line\":\"worse|1.0||limit",
      })
  void whatIsNoAngleOfTheReadingHasNoNumber(
      String finding, String value, Double line, Double assumed, String rule) {
    String end = value.endsWith("\"") || value.endsWith("8") ? "}}" : "\"}}";
    Map<String, Object> cells = value("\"" + finding + "\":{\"right\":{\"value\":\"" + value + end);
    assertEquals(null, cells.get("number"));
    assertEquals(line, cells.get("number_line"));
    assertEquals(assumed, cells.get("number_assumed"));
    assertEquals(rule, cells.get("number_rule"));
  }

  @ParameterizedTest
  @CsvSource({"1 M, 40 cm", "N8, 40 cm", "1 M, 1 m"})
  void printThatWasReadInPartHasNoNumber(String print, String distance) {
    String part = "{\"value\":\"%s\",\"distance\":\"%s\",\"read-in-part\":true}";
    Map<String, Object> cells =
        value("\"near-acuity\":{\"right\":%s}".formatted(part.formatted(print, distance)));
    assertEquals(null, cells.get("number"));
    assertEquals(null, cells.get("number_assumed"));
    assertEquals("read-in-part", cells.get("number_rule"));
  }

  /** 60 mmHg is where the scale ends, and no pressure: in a mean it would be one. */
  @Test
  void aLimitIsNoNumberOfWhatLiesBeyondIt() {
    Map<String, Object> cells =
        value(
            "\"pressure-beyond-scale\":{\"right\":{\"value\":\"60 mmHg\",\"beyond-limit\":"
                + "\"above\"}}");
    assertEquals(null, cells.get("number"));
    assertEquals(60.0, cells.get("number_line"));
    assertEquals("limit", cells.get("number_rule"));
  }

  @Test
  void everyAcuityHasARule() {
    ExamSampler exams = new ExamSampler(Catalogue.standard().all(), new SplittableRandom(3));
    int acuities = 0;
    for (int i = 0; i < 1_000; i++) {
      for (FindingRow row : FindingRows.of(Pooled.of(exams.next()))) {
        Map<String, Object> cells = RowReader.cells(FindingsTable.table(), row);
        if (row.seen() && cells.containsKey("notation") && row.finding().endsWith("-acuity")) {
          acuities++;
          boolean exact =
              List.of("recorded", "letters-counted")
                  .contains(cells.getOrDefault("number_rule", ""));
          assertTrue(cells.containsKey("number_rule"), cells::toString);
          assertEquals(exact, cells.containsKey("number"), cells::toString);
        }
      }
    }
    assertTrue(acuities > 200);
  }

  /** -2.00 -1.00 x 90 has M = -2.5, J0 = -0.5, J45 = 0 (Thibos 1997, formulas from memory). */
  @Test
  void aRefractionHasItsPowerVector() {
    Exam exam =
        exam(
            "\"refraction\":{\"right\":{\"sphere\":\"-2.00 D\",\"cylinder\":\"-1.00 D\","
                + "\"axis\":\"90 deg\"}}");
    Map<String, Double> parts = new java.util.TreeMap<>();
    for (FindingRow row : FindingRows.of(Pooled.of(exam))) {
      if (row.finding().equals("power-vector")) {
        Map<String, Object> cells = RowReader.cells(FindingsTable.table(), row);
        parts.put((String) cells.get("part"), Math.abs((Double) cells.get("number")));
      }
    }
    assertEquals(Map.of("m", 2.5, "j0", 0.5, "j45", 0.0), parts);
  }

  /** "yes" and "no" would not say what is so. */
  @Test
  void aRefractionSaysWhetherItIsCycloplegic() {
    String lens = "{\"sphere\":\"+%s.00 D\",\"cycloplegic\":%s,\"method\":\"retinoscopy\"}";
    Exam exam =
        exam(
            "\"refraction\":{\"right\":[%s,%s]}"
                .formatted(lens.formatted(2, true), lens.formatted(1, false)));
    Map<String, Object> eye =
        RowReader.cells(
            ExaminationsTable.table(Catalogue.standard()), EyeRow.of(Pooled.of(exam)).get(0));
    assertEquals(2.0, eye.get("refraction_cycloplegic_sphere"));
    assertEquals(1.0, eye.get("refraction_not_cycloplegic_sphere"));
    Map<Object, Object> spheres = new java.util.TreeMap<>();
    for (FindingRow row : FindingRows.of(Pooled.of(exam))) {
      Map<String, Object> cells = RowReader.cells(FindingsTable.table(), row);
      if (row.seen() && "sphere".equals(cells.get("part"))) {
        spheres.put(cells.get("condition"), cells.get("number"));
      }
    }
    assertEquals(Map.of("cycloplegic", 2.0, "not-cycloplegic", 1.0), spheres);
  }

  @Test
  void theWideTableShowsTheEarliestValueAndSaysWhich() {
    Exam exam =
        exam(
            """
            "intraocular-pressure":{"right":[\
            {"value":"19 mmHg","at":"2026-03-03T11:00:00Z"},\
            {"value":"15 mmHg"},{"absent":"refused","at":"2026-03-03T08:00:00Z"}]}""");
    EyeRow right = EyeRow.of(Pooled.of(exam)).get(0);
    Map<String, Object> cells =
        RowReader.cells(ExaminationsTable.table(Catalogue.standard()), right);
    assertEquals(15.0, cells.get("intraocular_pressure"));
    assertEquals(2L, cells.get("intraocular_pressure_count"));
    assertEquals("intraocular-pressure.right", cells.get("intraocular_pressure_fact"));
  }

  private static Map<String, Object> value(String findings) {
    return FindingRows.of(Pooled.of(exam(findings))).stream()
        .filter(FindingRow::seen)
        .map(row -> RowReader.cells(FindingsTable.table(), row))
        .filter(cells -> "value".equals(cells.get("part")))
        .findFirst()
        .orElseThrow();
  }

  private static Exam exam(String findings) {
    return new RecordReader(Catalogue.standard())
        .read(RECORD.formatted(findings), RecordFormat.JSON)
        .orThrow();
  }
}
