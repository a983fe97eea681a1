package org.isopter.profiles.compiled;

import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/**
 * The primitive types after FHIR R4, section 2.24 (data types), which has a regular expression for
 * each. Whatever is in doubt is not surely a value, and goes to the reference validator.
 */
class PrimitivesTest {

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "id|a-1.B",
        "code|mm[Hg]",
        "uri|http://loinc.org",
        "uri|https://hospital.example/ids/a_b/",
        "uri|urn:uuid:f81d4fae-7dec-11d0-a765-00a0c91e6bf6",
        "canonical|Patient",
        "uri|http://hl7.org/",
        "dateTime|2024-02-29",
        "string|Right eye, 6/9−2",
        "markdown|a < b",
        "dateTime|2026-02-28",
        "dateTime|2026-03-03T09:10:00+01:00",
        "instant|2026-03-03T09:10:00.123Z",
        "xhtml|<div xmlns=\"http://www.w3.org/1999/xhtml\">a &lt; b &amp; c</div>"
      })
  void takesWhatTheStandardAllows(String type, String text) {
    assertTrue(Primitives.isText(type, text), type + " " + text);
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "id|a_b",
        "id|''",
        "code|two words",
        "uri|not a uri",
        "uri|urn:uuid:f81d4fae",
        "uri|urn:uuid:F81D4FAE-7dec-11d0-a765-00a0c91e6bf6",
        "uri|http://",
        "uri|http://a//b",
        "uri|http://a?b",
        "uri|http://a_b",
        "uri|patient",
        "uri|A",
        "string|a </b",
        "dateTime|2026-13-01",
        "dateTime|2025-02-29",
        "instant|2026-03-03T09:60:00Z",
        "instant|2026-02-30T09:10:00Z",
        "xhtml|<div xmlns=\"http://www.w3.org/1999/xhtml\">a & b</div>",
        "xhtml|<div xmlns=\"http://www.w3.org/1999/xhtml\"></div",
        "string|''",
        "string|' leading'",
        "string|a <b>bold</b>",
        "dateTime|2026-02-30",
        "dateTime|2026-03",
        "dateTime|2026-03-03T09:10",
        "instant|2026-03-03",
        "instant|2026-03-03T25:10:00Z",
        "xhtml|plain",
        "xhtml|<div xmlns=\"http://www.w3.org/1999/xhtml\"> </div>",
        "xhtml|<div xmlns=\"http://www.w3.org/1999/xhtml\"><p>a</p></div>",
        "xhtml|<div xmlns=\"http://www.w3.org/1999/xhtml\">open",
        "noSuchType|a"
      })
  void isNotSureOfAnythingElse(String type, String text) {
    assertFalse(Primitives.isText(type, text), type + " " + text);
  }

  @Test
  void isNotSureOfCharactersThatNobodySees() {
    for (String unseen :
        new String[] {"\u0000", "\u200b", "\ue000", "\u2028", "\u00a0", "\ud800"}) {
      assertFalse(Primitives.isText("string", "a" + unseen + "b"));
      assertFalse(
          Primitives.isText(
              "xhtml", "<div xmlns=\"http://www.w3.org/1999/xhtml\">a" + unseen + "</div>"));
    }
    assertTrue(Primitives.isText("string", "\u00e4 \ud83d\udc41"));
  }

  @Test
  void isNotSureOfTextsWithoutEnd() {
    assertFalse(Primitives.isText("string", "a".repeat(100_001)));
    assertFalse(Primitives.isText("uri", "http://a.example/" + "a".repeat(500)));
    assertTrue(Primitives.isText("string", "a".repeat(100_000)));
  }

  @ParameterizedTest
  @CsvSource({"decimal,0.50", "decimal,-12", "integer,0", "integer,-7"})
  void takesNumbers(String type, String digits) {
    assertTrue(Primitives.isNumber(type, digits), digits);
  }

  @ParameterizedTest
  @CsvSource({"decimal,01", "decimal,1e3", "decimal,.5", "integer,1.0", "integer,-0", "string,1"})
  void isNotSureOfOtherNumbers(String type, String digits) {
    assertFalse(Primitives.isNumber(type, digits), digits);
  }
}
