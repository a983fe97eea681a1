package org.isopter.mapper.cda;

import static java.nio.charset.StandardCharsets.UTF_8;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.stream.Stream;
import org.isopter.mapper.foreign.ForeignReader;
import org.isopter.mapper.foreign.reading.Options;
import org.isopter.mapper.foreign.reading.ReadExam;
import org.isopter.mapper.foreign.reading.Reading;
import org.isopter.mapper.json.Raw;
import org.isopter.model.catalogue.Acuities;
import org.isopter.model.catalogue.Catalogue;
import org.isopter.model.catalogue.Pressures;
import org.isopter.model.exam.Exam;
import org.junit.jupiter.api.DynamicTest;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.TestFactory;

/**
 * A clinical document in the shape of HL7's example for eye care (HL7/cda-eyecare,
 * eyecare-ccd.xml): what it measures is taken, and one change that may turn a measurement round
 * keeps that measurement from being taken.
 */
class CdaReaderTest {

  private static final Path DOCUMENT = Path.of("../docs/clinical-document.xml");
  private static final int FACTS = 10;
  private static final ForeignReader READER =
      new ForeignReader(Catalogue.standard(), Options.usual());

  private static String document() throws IOException {
    return Files.readString(DOCUMENT);
  }

  private static Reading read(String xml) {
    Raw bundle = CdaReader.read(xml.getBytes(UTF_8)).orThrow();
    return READER.readTogether(List.of(bundle));
  }

  private static int facts(String xml) {
    return read(xml).exams().stream().mapToInt(one -> one.exam().facts().size()).sum();
  }

  @Test
  void takesAcuityPressureAndRefraction() throws IOException {
    assertTrue(CdaReader.isCda(document().getBytes(UTF_8)));
    List<Exam> exams = read(document()).exams().stream().map(ReadExam::exam).toList();
    assertEquals(1, exams.size());
    assertEquals(FACTS, exams.get(0).facts().size());
    assertEquals(
        "16.50 mmHg",
        exams.get(0).view().left().only(Pressures.INTRAOCULAR).orElseThrow().value().toString());
  }

  private record Change(String what, String from, String to, int lost) {}

  private static final String LEFT =
      "<qualifier><name code=\"272741003\" codeSystem=\"2.16.840.1.113883.6.96\"/><value code=\"7771000\" codeSystem=\"2.16.840.1.113883.6.96\"/></qualifier>";

  /** The first place of each is changed. */
  private static final List<Change> CHANGES =
      List.of(
          new Change(
              "denied",
              "moodCode=\"EVN\">\n                <templ",
              "moodCode=\"EVN\" negationInd=\"true\">\n                <templ",
              1),
          new Change(
              "asked for",
              "<observation classCode=\"OBS\" moodCode=\"EVN\"",
              "<observation classCode=\"OBS\" moodCode=\"RQO\"",
              1),
          new Change("another text", ">20/80</paragraph>", ">20/80 left eye</paragraph>", 1),
          new Change("other units", "[ft_us]/[ft_us]", "m/m", 1),
          new Change(
              "no status", "<statusCode code=\"completed\"/>\n                <eff", "<eff", 1),
          new Change(
              "nullified",
              "<statusCode code=\"completed\"/>\n                <eff",
              "<statusCode code=\"nullified\"/>\n                <eff",
              1),
          new Change(
              "a side that is qualified",
              "displayName=\"Right eye\"/>",
              "displayName=\"Right eye\"><qualifier/></targetSiteCode>",
              1),
          new Change(
              "no side",
              "<targetSiteCode code=\"362502000\" codeSystem=\"2.16.840.1.113883.6.96\" displayName=\"Right eye\"/>",
              "",
              1),
          new Change(
              "a condition",
              "<effectiveTime value=\"20260612101500+0100\"/>",
              "<effectiveTime value=\"20260612101500+0100\"/><precondition/>",
              1),
          new Change(
              "two values",
              "<value xsi:type=\"ST\">20/80</value>",
              "<value xsi:type=\"ST\">20/80</value><value xsi:type=\"ST\">20/40</value>",
              1),
          new Change("an unknown relationship", "code=\"246514001\"", "code=\"1\"", 1),
          new Change(
              "another side in words",
              "displayName=\"Right eye\"/>",
              "><originalText>left eye</originalText></targetSiteCode>",
              1),
          new Change("another unit", "code=\"mm[Hg]\"", "code=\"kPa\"", 1),
          new Change("a section about a relative", "<title>Intra", "<subject/><title>Intra", 2),
          new Change(
              "an organizer not completed",
              "visual acuity\"/>\n            <statusCode code=\"completed\"/>",
              "visual acuity\"/>\n            <statusCode code=\"aborted\"/>",
              4),
          new Change(
              "an organizer about a relative",
              "visual acuity\"/>\n            <statusCode",
              "visual acuity\"/>\n            <subject/><statusCode",
              4),
          new Change("another aid to vision", "code=\"50121007\"", "code=\"261195002\"", 2),
          new Change("a part twice", "<code code=\"251797004\"", "<code code=\"251795007\"", 1),
          new Change(
              "a part of another kind", "<code code=\"251797004\"", "<code code=\"277889008\"", 1),
          new Change(
              "a section of goals", "<title>Intraocular pressure", "<title>Pressure goals", 2),
          new Change(
              "a section of plans",
              "<title>Intra",
              "<code displayName=\"Treatment plan\"/><title>Intra",
              2),
          new Change(
              "an empty section",
              "<section>\n        <title>Intra",
              "<section nullFlavor=\"NI\"><title>Intra",
              2),
          new Change(
              "an entry that is planned",
              "<organizer classCode=\"BATTERY\" moodCode=\"EVN\">",
              "<organizer classCode=\"BATTERY\" moodCode=\"INT\">",
              4),
          new Change(
              "the patient as the author",
              "<value xsi:type=\"PQ\" value=\"14\"",
              "<author><assignedAuthor><id root=\"2.999.7.9\" extension=\"qh-0417\"/></assignedAuthor></author><value xsi:type=\"PQ\" value=\"14\"",
              1),
          new Change(
              "a relative as the informant",
              "<value xsi:type=\"PQ\" value=\"14\"",
              "<informant><relatedEntity classCode=\"PRS\"/></informant><value xsi:type=\"PQ\" value=\"14\"",
              1),
          new Change(
              "an interpretation that bounds",
              "<value xsi:type=\"PQ\" value=\"14\"",
              "<interpretationCode code=\"&lt;\" codeSystem=\"2.16.840.1.113883.5.83\"/><value xsi:type=\"PQ\" value=\"14\"",
              1),
          new Change(
              "words that are not there",
              "<reference value=\"#p1\"/>",
              "<reference value=\"#p7\"/>",
              1),
          new Change(
              "an eye that is qualified as the other",
              "displayName=\"Right eye\"/>",
              "displayName=\"Right eye\">" + LEFT + "</targetSiteCode>",
              1));

  /** The opposite of changes above, which says nothing of the value. */
  private static final List<Change> HARMLESS =
      List.of(
          new Change(
              "a section by another name",
              "<title>Intra",
              "<code displayName=\"Physical findings of Eye Narrative\"/><title>Intra",
              0),
          new Change(
              "a nurse as the informant",
              "<value xsi:type=\"PQ\" value=\"14\"",
              "<informant><assignedEntity><id root=\"2.999.1\" extension=\"n\"/></assignedEntity></informant><value xsi:type=\"PQ\" value=\"14\"",
              0),
          new Change(
              "somebody else as the author",
              "<value xsi:type=\"PQ\" value=\"14\"",
              "<author><assignedAuthor><id root=\"2.999.1\" extension=\"n\"/></assignedAuthor></author><value xsi:type=\"PQ\" value=\"14\"",
              0),
          new Change(
              "an interpretation within the range",
              "<value xsi:type=\"PQ\" value=\"14\"",
              "<interpretationCode code=\"N\" codeSystem=\"2.16.840.1.113883.5.83\"/><value xsi:type=\"PQ\" value=\"14\"",
              0),
          new Change(
              "an eye and its side as a qualifier",
              "code=\"362503005\" codeSystem=\"2.16.840.1.113883.6.96\" displayName=\"Left eye\"/>",
              "code=\"81745001\" codeSystem=\"2.16.840.1.113883.6.96\" displayName=\"Eye\">"
                  + LEFT
                  + "</targetSiteCode>",
              0));

  @TestFactory
  Stream<DynamicTest> takesNothingThatIsTurnedRound() throws IOException {
    return changed(CHANGES);
  }

  @TestFactory
  Stream<DynamicTest> takesWhatStandsBesideSomethingHarmless() throws IOException {
    return changed(HARMLESS);
  }

  private static Stream<DynamicTest> changed(List<Change> changes) throws IOException {
    String document = document();
    return changes.stream()
        .map(
            change ->
                DynamicTest.dynamicTest(
                    change.what(),
                    () -> {
                      int at = document.indexOf(change.from());
                      assertTrue(at > 0, change.from());
                      String changed =
                          document.substring(0, at)
                              + change.to()
                              + document.substring(at + change.from().length());
                      assertEquals(FACTS - change.lost(), facts(changed));
                    }));
  }

  /** What was written where a code was chosen may be more, or less, than the code. */
  @Test
  void takesACodeOnlyWithItsOwnWords() throws IOException {
    assertEquals(FACTS, facts(withoutLight("")));
    assertEquals(
        FACTS,
        facts(withoutLight("<originalText>Visual acuity, no light perception</originalText>")));
    assertEquals(FACTS - 1, facts(withoutLight("<originalText>probably no light</originalText>")));
  }

  /** Returns the document with no light perception, in words, in the place of 20/80. */
  private static String withoutLight(String words) throws IOException {
    String value =
        "<value xsi:type=\"CD\" code=\"63063006\" codeSystem=\"2.16.840.1.113883.6.96\" displayName=\"Visual acuity, no light perception\">"
            + words
            + "</value>";
    String document =
        document()
            .replace("<text><reference value=\"#d1\"/></text>", "")
            .replace("<value xsi:type=\"ST\">20/80</value>", value);
    int units = document.indexOf("<entryRelationship", document.indexOf(value));
    int end = document.indexOf("</entryRelationship>", units) + "</entryRelationship>".length();
    return document.substring(0, units) + document.substring(end);
  }

  /**
   * HL7/cda-eyecare, VisualAcuityObservation: what was looked through is said within the acuity.
   */
  @Test
  void takesGlassesAsTheCorrectionOfAnAcuity() throws IOException {
    String plain =
        document()
            .replace("code=\"420050001\"", "code=\"363983007\"")
            .replace("Uncorrected visual acuity", "Visual acuity");
    assertEquals("Optional.empty", correction(plain));
    assertEquals("Optional[CORRECTED]", correction(aided(plain, "50121007", "")));
    assertEquals(FACTS - 1, facts(aided(document(), "50121007", "")), "unaided, with glasses");
    assertEquals(FACTS - 1, facts(aided(plain, "57368009", "")), "another aid");
    assertEquals(FACTS - 1, facts(aided(plain, "50121007", " negationInd=\"true\"")), "denied");
  }

  private static String aided(String document, String aid, String more) {
    String units = "<entryRelationship typeCode=\"COMP\">";
    int at = document.indexOf(units);
    String code = "<code code=\"%s\" codeSystem=\"2.16.840.1.113883.6.96\"/>";
    String said =
        units
            + "<observation classCode=\"OBS\" moodCode=\"EVN\""
            + more
            + ">"
            + code.formatted("257192006")
            + code.formatted(aid).replace("<code", "<value xsi:type=\"CD\"")
            + "</observation></entryRelationship>";
    return document.substring(0, at) + said + document.substring(at);
  }

  private static String correction(String document) {
    return read(document)
        .exams()
        .get(0)
        .exam()
        .view()
        .right()
        .seen(Acuities.DISTANCE)
        .map(acuity -> String.valueOf(acuity.value().correction()))
        .findFirst()
        .orElse("none");
  }

  @Test
  void takesASideThatIsSaidInWordsAsInCode() throws IOException {
    String said =
        document()
            .replace(
                "displayName=\"Right eye\"/>",
                "displayName=\"Right eye\"><originalText>OD:</originalText></targetSiteCode>");
    assertEquals(FACTS, facts(said));
  }

  /** What was not measured is recorded as such where the reason is one of ours. */
  @Test
  void takesAReasonForNoValue() throws IOException {
    String asked =
        document()
            .replace(
                "<value xsi:type=\"PQ\" value=\"14\" unit=\"mm[Hg]\"/>",
                "<value nullFlavor=\"NASK\"/>")
            .replace(">14 mmHg<", "><");
    assertTrue(read(asked).exams().get(0).exam().facts().size() >= FACTS - 1);
    assertFalse(read(asked).exams().get(0).exam().toString().contains("14 mmHg"));
  }

  @Test
  void carriesTheWholeDocumentAlong() throws IOException {
    Raw bundle = CdaReader.read(document().getBytes(UTF_8)).orThrow();
    List<Raw.Obj> entries = bundle.objects("entry");
    Raw.Obj whole = entries.get(entries.size() - 1).object("resource").orElseThrow();
    String data = whole.string("data").orElseThrow();
    assertEquals(document(), new String(java.util.Base64.getDecoder().decode(data), UTF_8));
  }

  @Test
  void refusesWhatCouldReachOutOfTheDocument() throws IOException {
    String entity =
        document()
            .replace(
                "<ClinicalDocument",
                "<!DOCTYPE x [<!ENTITY e SYSTEM \"file:///etc/hostname\">]><ClinicalDocument")
            .replace("20/80<", "&e;<");
    assertTrue(CdaReader.isCda(entity.getBytes(UTF_8)));
    String deep = "<ClinicalDocument xmlns=\"urn:hl7-org:v3\">" + "<a>".repeat(5000);
    String other = "<ClinicalDocument xmlns=\"urn:other\"/>";
    for (String bad : List.of(entity, deep, other, "<ClinicalDocument", "")) {
      assertFalse(
          CdaReader.read(bad.getBytes(UTF_8)).isOk(), bad.substring(0, Math.min(40, bad.length())));
    }
    assertFalse(CdaReader.isCda("<Bundle xmlns=\"http://hl7.org/fhir\"/>".getBytes(UTF_8)));
  }
}
