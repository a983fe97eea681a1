package org.isopter.mapper.cda;

import static java.nio.charset.StandardCharsets.UTF_8;
import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.List;
import org.isopter.mapper.foreign.ForeignReader;
import org.isopter.mapper.foreign.reading.Options;
import org.isopter.model.catalogue.Catalogue;
import org.isopter.model.exam.Fact;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/**
 * The text for people against the codes beside it, in the shape of the pressures of HL7's example
 * for eye care (HL7/cda-eyecare, eyecare-ccd.xml): a row for each eye, and the eye, the method and
 * the name of the test refer into it. What a section says is what its author signed (HL7 CDA R2,
 * 1.2.3), so that a value that it contradicts is not taken.
 */
class CdaNarrativeTest {

  private static final String SNOMED = "codeSystem=\"2.16.840.1.113883.6.96\"";

  private static final String DOCUMENT =
      """
      <ClinicalDocument xmlns="urn:hl7-org:v3" xmlns:xsi="http://www.w3.org/2001/XMLSchema-instance">
        <recordTarget><patientRole><id root="2.999.7.9" extension="p-1"/></patientRole></recordTarget>
        <component><structuredBody><component><section>
          <title>DIAGNOSTIC ASSESSMENT TESTS</title>
          <text>
            <paragraph><content ID="name">NAME</content></paragraph>
            <table><tbody>
              <tr ID="row1"><td ID="method1">NCT</td><td ID="eye1">EYE1</td><td ID="result1">VALUE1 mm[Hg]</td><td>expected: 0 to 100 mm[Hg]</td></tr>
              <tr ID="row2"><td ID="method2">NCT</td><td ID="eye2">OS:</td><td ID="result2">18 mm[Hg]</td><td>expected: 0 to 100 mm[Hg]</td></tr>
            </tbody></table>
            <paragraph ID="other">Osmolarity</paragraph>
          </text>
          <entry><organizer classCode="BATTERY" moodCode="EVN">
            <code code="164729009" SNOMED displayName="Tonometry (IOP)"><originalText><reference value="#OF"/></originalText></code>
            <statusCode code="completed"/>
            %s
            %s
          </organizer></entry>
        </section></component></structuredBody></component>
      </ClinicalDocument>
      """;

  private static final String PRESSURE =
      """
      <component><observation classCode="OBS" moodCode="EVN">
        <code code="41633001" SNOMED displayName="IOP - intraocular pressure"/>
        <text><reference value="#TEXT"/></text>
        <statusCode code="completed"/>
        <effectiveTime value="20260306081500-0500"/>
        <value xsi:type="PQ" value="%s" unit="mm[Hg]"/>
        <methodCode code="389150000" SNOMED displayName="Non-contact tonometry"><originalText><reference value="#method%s"/></originalText></methodCode>
        <targetSiteCode code="%s" SNOMED displayName="%s"><originalText><reference value="#eye%s"/></originalText></targetSiteCode>
      </observation></component>
      """;

  private static String right(String text) {
    return PRESSURE.formatted("21", "1", "362502000", "Right eye", "1").replace("TEXT", text);
  }

  private static String left(String text) {
    return PRESSURE.formatted("18", "2", "362503005", "Left eye", "2").replace("TEXT", text);
  }

  private static String document(String right, String left, String organizer) {
    return DOCUMENT
        .formatted(right, left)
        .replace("SNOMED", SNOMED)
        .replace("#OF", organizer)
        .replace("EYE1", "OD:")
        .replace("VALUE1", "21")
        .replace("NAME", "Tonometry (IOP) on 2026-03-06 at 08:00a");
  }

  private static List<String> read(String document) {
    return new ForeignReader(Catalogue.standard(), Options.usual())
        .readTogether(List.of(CdaReader.read(document.getBytes(UTF_8)).orThrow())).exams().stream()
            .flatMap(one -> one.exam().facts().stream())
            .map(CdaNarrativeTest::shown)
            .toList();
  }

  private static String shown(Fact<?> fact) {
    return fact.site().name() + " " + String.valueOf(fact.outcome().ifFound().orElse(null));
  }

  @Test
  void takesWhatTheRowsSay() {
    assertEquals(
        List.of("RIGHT 21 mmHg", "LEFT 18 mmHg"),
        read(document(right("result1"), left("result2"), "#name")));
  }

  /**
   * HL7's example leads from its right pressure to nothing, from the left to the name of another
   * test, and from both to the row of the right.
   */
  @Test
  void takesOfTheExampleThePressureThatItsRowConfirms() {
    assertEquals(
        List.of("RIGHT 21 mmHg"), read(document(right("nothing"), left("other"), "#row1")));
  }

  /** The left pressure, of which the text is as it was, is the witness. */
  @ParameterizedTest
  @CsvSource(
      textBlock =
          """
          VALUE1 of another, >21 mm[Hg]<, >12 mm[Hg]<
          a bound, >21 mm[Hg]<, >&gt;21 mm[Hg]<
          a range, >21 mm[Hg]<, >19-21 mm[Hg]<
          a range in words, >21 mm[Hg]<, >19 to 21 mm[Hg]<
          a second one, >21 mm[Hg]<, >21 mm[Hg] then 25 mm[Hg]<
          another unit, >21 mm[Hg]<, >21 kPa<
          another eye, >OD:<, >OS:<
          the text of the other row, #result1, #result2
          another day, on 2026-03-06, on 2025-03-06
          planned, on 2026-03-06 at 08:00a, on 2026-03-06 at 08:00a (target)
          """)
  void takesNothingThatItsTextContradicts(String what, String from, String to) {
    String document = document(right("result1"), left("result2"), "#name");
    List<String> left = read(document.replace(from, to));
    boolean both = what.equals("another day") || what.equals("planned");
    assertEquals(both ? List.of() : List.of("LEFT 18 mmHg"), left, what);
  }

  @ParameterizedTest
  @CsvSource(
      textBlock =
          """
          no unit, >21 mm[Hg]<, >21<
          no day, ' on 2026-03-06 at 08:00a', ''
          an upper range, expected: 0 to 100, Normal range: 10 - 21
          """)
  void takesWhatItsTextConfirms(String what, String from, String to) {
    String document = document(right("result1"), left("result2"), "#name");
    assertEquals(2, read(document.replace(from, to)).size(), what);
  }

  /** Where nothing refers to the text, the section has the value as it is, or has no numbers. */
  @ParameterizedTest
  @CsvSource({
    "Pressure 21 and 18 mmHg, 2",
    "Pressures taken, 2",
    "Pressure 21 and 81 mmHg, 1",
    "Pressure > 21 and 18 mmHg, 1",
    "Left 18 mmHg; right not measured, 1"
  })
  void takesNoValueThatItsSectionLeavesOut(String words, int taken) {
    String bare =
        document(right("x"), left("x"), "#name")
            .replaceAll("<originalText>.*?</originalText>", "")
            .replaceAll("<text><reference value=\"#x\"/></text>", "")
            .replaceAll(
                "(?s)<text>.*?</table>.*?</text>",
                "<text>" + words.replace(">", "&gt;") + "</text>");
    assertEquals(taken, read(bare).size());
  }
}
