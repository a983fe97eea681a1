package org.isopter.mapper.record;

import static java.nio.charset.StandardCharsets.ISO_8859_1;
import static java.nio.charset.StandardCharsets.UTF_8;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.math.BigDecimal;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import org.isopter.mapper.record.tree.Limits;
import org.isopter.model.catalogue.Acuities;
import org.isopter.model.catalogue.Catalogue;
import org.isopter.model.catalogue.Pressures;
import org.isopter.model.exam.Exam;
import org.isopter.model.exam.Seen;
import org.isopter.model.value.Acuity;
import org.isopter.model.value.Fault;
import org.isopter.model.value.Result;
import org.isopter.model.value.Unit;
import org.junit.jupiter.api.Test;

class RecordReaderTest {

  private final RecordReader reader = new RecordReader(Catalogue.standard());

  @Test
  void readsTheRecordThatThePageShows() throws IOException {
    String page = Files.readString(Path.of("../docs/mapping.md"), UTF_8);
    int start = page.indexOf("```yaml\n") + 8;
    Exam exam = yaml(page.substring(start, page.indexOf("```", start))).orThrow();
    assertEquals(6, exam.facts().size());
    assertEquals(2, exam.view().right().seen(Acuities.DISTANCE).count());
  }

  @Test
  void keepsTheDigitsThatWereWritten() {
    Exam exam =
        yaml(Records.with(
                """
                      distance-acuity:
                        right: 0.30 logMAR
                      intraocular-pressure:
                        right: 14.0 mmHg
                    """))
            .orThrow();
    assertEquals(
        Optional.of(new Acuity.LogMar(new BigDecimal("0.30"))),
        exam.view().seen(Acuities.DISTANCE).findFirst().map(seen -> seen.value().acuity()));
    assertEquals(
        "14.0 mmHg",
        exam.view().seen(Pressures.INTRAOCULAR).findFirst().orElseThrow().value().toString());
  }

  @Test
  void takesAnUnusualFractionThatItsUnitOrTheDistanceExplains() {
    Exam exam =
        yaml(Records.with(
                """
                      distance-acuity:
                        right: { value: 6/20, distance: 6 m }
                        left: 6/20 m
                    """))
            .orThrow();
    for (var reading : exam.view().seen(Acuities.DISTANCE).map(Seen::value).toList()) {
      assertEquals(Unit.METRE, ((Acuity.Fraction) reading.acuity()).unit());
    }
  }

  @Test
  void keepsAFractionInMetresBesideADistanceInFeet() {
    Exam exam =
        yaml(Records.with("  distance-acuity: { left: { value: 3/60 m, distance: 3 ft } }\n"))
            .orThrow();
    String written = new RecordWriter().write(exam, RecordFormat.YAML);
    assertTrue(written.contains("value: 3/60 m,"), written);
    assertEquals(Result.ok(exam), yaml(written));
  }

  @Test
  void takesAnIdentifierOfDigitsInQuotes() {
    Exam exam = yaml(Records.with(" {}\n").replace("p-17", "\"017\"")).orThrow();
    assertEquals("017", exam.header().subject().identifier().orElseThrow().value());
  }

  @Test
  void readsTextWithAByteOrderMarkAndForeignLineEnds() {
    String text = "\uFEFF" + Records.with(" {}\n").replace("\n", "\r\n");
    assertTrue(reader.read(text.getBytes(UTF_8), RecordFormat.YAML).isOk());
  }

  @Test
  void refusesBytesThatAreNoUtf8() {
    byte[] bytes = (Records.with(" {}\n") + "remark: geröt\n").getBytes(ISO_8859_1);
    Result<Exam> result = reader.read(bytes, RecordFormat.YAML);
    assertEquals("bytes that are no UTF-8", result.faults().get(0).seen());
  }

  @Test
  void refusesARecordTooLongToBeOne() {
    Result<Exam> result = yaml(Records.HEAD + "#".repeat(Limits.LENGTH));
    assertFalse(result.isOk());
    assertEquals(1, result.faults().size());
  }

  @Test
  void refusesDeepNestingWithoutRunningOutOfStack() {
    String deep = "[".repeat(400_000);
    assertEquals("line 1, column 18", reader.read(deep, RecordFormat.JSON).faults().get(0).path());
    assertFalse(yaml(deep).isOk());
    assertFalse(yaml("{a: ".repeat(100_000)).isOk());
  }

  @Test
  void tellsEveryFaultOfARecordInTheOrderOfTheText() {
    List<Fault> faults =
        yaml("""
                isopter: 1
                record: { id: 12 }
                subject: { }
                performed: 2026-03-02
                status: final
                findings:
                  distance-acuity:
                    right: { value: 0.5, distance: 6, correction: specs }
                  intraocular-pressure: { right: [14, 99 mmHg] }
                """)
            .faults();
    assertEquals(
        List.of(
            "line 2, column 15: record.id",
            "line 3, column 10: subject",
            "line 4, column 12: performed",
            "line 8, column 21: findings.distance-acuity.right.value",
            "line 8, column 36: findings.distance-acuity.right.distance",
            "line 8, column 51: findings.distance-acuity.right.correction",
            "line 9, column 35: findings.intraocular-pressure.right[0]",
            "line 9, column 39: findings.intraocular-pressure.right[1]"),
        faults.stream().map(Fault::path).toList());
  }

  @Test
  void neverThrowsOnABrokenText() {
    String whole = Records.with("  intraocular-pressure: { right: [ 14 mmHg, \"x\" ] }\n");
    for (int end = 0; end < whole.length(); end++) {
      for (String tail :
          List.of("", "\0", "{", "\"", "*", "&a", "!x ", "? ", "%", "\t", "\uD800")) {
        for (RecordFormat format : RecordFormat.values()) {
          reader.read(whole.substring(0, end) + tail, format);
        }
      }
    }
  }

  @Test
  void knowsTheFormatByNameAndByFileName() {
    assertEquals(Optional.of(RecordFormat.YAML), RecordFormat.of("YML"));
    assertEquals(Optional.of(RecordFormat.JSON), RecordFormat.ofFileName("a.b/exam.JSON"));
    assertEquals(Optional.empty(), RecordFormat.ofFileName("exam"));
    assertEquals(Optional.empty(), RecordFormat.of("xml"));
  }

  private Result<Exam> yaml(String text) {
    return reader.read(text, RecordFormat.YAML);
  }
}
