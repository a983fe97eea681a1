package org.isopter.mapper.v2;

import static java.nio.charset.StandardCharsets.UTF_8;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.ZoneId;
import java.util.List;
import java.util.Optional;
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
 * A message with results (HL7 v2.5.1, chapters 2 and 7), read by HL7's map to FHIR (HL7/v2-to-fhir,
 * segment OBX): what it measures is taken, and one change that may turn a result round keeps that
 * result from being taken.
 */
class V2ReaderTest {

  private static final Path MESSAGE = Path.of("../docs/results.hl7");
  private static final int FACTS = 4;
  private static final ForeignReader READER =
      new ForeignReader(Catalogue.standard(), Options.usual());

  private static String message() throws IOException {
    return Files.readString(MESSAGE);
  }

  private static Reading read(String message) {
    return READER.readTogether(List.of(V2Reader.read(message.getBytes(UTF_8)).orThrow()));
  }

  private static int facts(String message) {
    return read(message).exams().stream().mapToInt(one -> one.exam().facts().size()).sum();
  }

  @Test
  void takesPressureAndAcuity() throws IOException {
    for (String ends : List.of("\n", "\r", "\r\n")) {
      List<Exam> exams =
          read(message().replace("\n", ends)).exams().stream().map(ReadExam::exam).toList();
      assertEquals(1, exams.size());
      Exam exam = exams.get(0);
      assertEquals(FACTS, exam.facts().size());
      assertEquals(
          "16.50 mmHg",
          exam.view().left().only(Pressures.INTRAOCULAR).orElseThrow().value().toString());
      assertEquals(
          "6/9-2",
          exam.view().left().only(Acuities.DISTANCE).orElseThrow().value().acuity().toString());
      assertEquals("2026-06-12T10:15+01:00", exam.header().performed().toString());
    }
  }

  private static List<String> times(String message, Optional<ZoneId> zone) {
    return V2Reader.read(message.getBytes(UTF_8), zone).orThrow().objects("entry").stream()
        .flatMap(
            entry -> entry.object("resource").orElseThrow().string("effectiveDateTime").stream())
        .distinct()
        .toList();
  }

  /** HL7 v2.5.1, section 2A.3.22: without an offset, that of the message, or else a local one. */
  @Test
  void takesTheOffsetOfTheMessageBeforeThatOfTheZone() throws IOException {
    Optional<ZoneId> paris = Optional.of(ZoneId.of("Europe/Paris"));
    String message = message();
    String silent = message.replace("20260612104500+0100", "20260612104500");
    assertEquals(List.of("2026-06-12T10:15:00+01:00"), times(message, paris));
    assertEquals(List.of("2026-06-12T10:15:00+02:00"), times(silent, paris));
    assertEquals(List.of("2026-06-12"), times(silent, Optional.empty()));
    String own = silent.replace("20260612101500", "20260612101500-0500");
    assertEquals(List.of("2026-06-12T10:15:00-05:00"), times(own, paris));
    String day = silent.replace("20260612101500", "20260612");
    assertEquals(List.of("2026-06-12"), times(day, paris));
  }

  /** Directive 2000/84/EC: clocks go back at 03:00 on 25 October 2026, on at 02:00 on 29 March. */
  @Test
  void takesTheDayAloneOfAnHourThatClocksShowTwiceOrNever() throws IOException {
    Optional<ZoneId> paris = Optional.of(ZoneId.of("Europe/Paris"));
    String silent = message().replace("20260612104500+0100", "20260612104500");
    assertEquals(
        List.of("2026-10-25"), times(silent.replace("20260612101500", "20261025023000"), paris));
    assertEquals(
        List.of("2026-03-29"), times(silent.replace("20260612101500", "20260329023000"), paris));
    assertEquals(
        List.of("2026-10-25T03:30:00+01:00"),
        times(silent.replace("20260612101500", "20261025033000"), paris));
    assertEquals(
        List.of("2026-10-25T01:30:00+02:00"),
        times(silent.replace("20260612101500", "20261025013000"), paris));
  }

  private record Change(String from, String to, int lost) {}

  private static final List<Change> CHANGES =
      List.of(
          new Change(
              "|F|||20260612101500||||||362502000^Right eye^SCT",
              "|D|||20260612101500||||||362502000^Right eye^SCT",
              1),
          new Change(
              "|F|||20260612101500||||||362502000^Right eye^SCT",
              "|X|||20260612101500||||||362502000^Right eye^SCT",
              1),
          new Change(
              "|F|||20260612101500||||||362502000^Right eye^SCT",
              "||||20260612101500||||||362502000^Right eye^SCT",
              1),
          new Change("||14|", "||14~15|", 1),
          new Change("||14|", "||\"\"|", 1),
          new Change("||14|", "||14 at first|", 1),
          new Change("NM|41633001", "XX|41633001", 1),
          new Change("mm[Hg]^mmHg^UCUM", "kPa^kPa^UCUM", 1),
          new Change(
              "362502000^Right eye^SCT", "362502000^Right eye^SCT~362503005^Left eye^SCT", 1),
          new Change("362502000^Right eye^SCT", "", 1),
          new Change("^20^/^40", "^20^-^40", 1),
          new Change("^20^/^40", "~20^/^40", 1),
          new Change("Sitting, calm", "This is the right eye", 1),
          new Change("\nOBX|1", "\nSPM|1\nOBX|1", FACTS),
          new Change("Eye examination", "Corrected visual acuity", FACTS),
          new Change("Eye examination", "Left eye examination", FACTS),
          new Change("|||||||||||||||||F\n", "|||||||||||||||||X\n", FACTS),
          new Change(
              "OBR|1|o-1|f-1|EXAM^Eye examination^L|||20260612101500|",
              "OBR|1|o-1|f-1|EXAM^Eye examination^L|||20260612101500||||||under anaesthesia",
              FACTS),
          new Change("mm[Hg]^mmHg^UCUM", "mm[Hg]^kPa^UCUM", 1),
          new Change("mm[Hg]^mmHg^UCUM", "mm[Hg]^mmHg^UCUM^kPa^kPa^L", 1),
          new Change("mm[Hg]^mmHg^UCUM", "mmHg^kPa^L", 1),
          new Change("mmHg^UCUM|||||F", "mmHg^UCUM||<|||F", 1),
          new Change("mmHg^UCUM|||||F", "mmHg^UCUM||H~A|||F", 1),
          new Change("|F|||20260612101500||||||", "|F|||20260612101500||^Self||||", 1),
          new Change("|F|||20260612101500||||||", "|F|||20260612101500||||Home monitor||", 1),
          new Change(
              "362502000^Right eye^SCT\nOBX|2", "362502000^Right eye^SCT|||Home test\nOBX|2", 1),
          new Change("^QHREC^MR\n", "^QHREC^MR" + "|".repeat(32) + "DOG^Canine^L\n", FACTS),
          new Change("^QHREC^MR\n", "^QHREC^MR" + "|".repeat(27) + "Y\n", FACTS),
          new Change("^QHREC^MR\n", "^QHREC^MR\nNTE|1|L|results of the twin\n", FACTS),
          new Change("\nOBX|2", "\nZEY|LEFT\nOBX|2", 1),
          new Change("\nOBX|1", "\nZEY|LEFT\nOBX|1", FACTS),
          new Change("OBR|1", "ORC|CA|o-1\nOBR|1", FACTS),
          new Change("OBR|1", "ORC|RE|o-1|||CA\nOBR|1", FACTS));

  /** The opposite of each change above, which says nothing of the value. */
  private static final List<Change> HARMLESS =
      List.of(
          new Change("mm[Hg]^mmHg^UCUM", "mm[Hg]^mmHg^UCUM^MMHG^mm Hg^L", 0),
          new Change("mm[Hg]^mmHg^UCUM", "mmHg^mm Hg^L", 0),
          new Change("mmHg^UCUM|||||F", "mmHg^UCUM||H|||F", 0),
          new Change("|F|||20260612101500||||||", "|F|||20260612101500||R7^Reyes^Ana||||", 0),
          new Change("|F|||20260612101500||||||", "|F|||20260612101500||||T-17||", 0),
          new Change(
              "362502000^Right eye^SCT\nOBX|2", "362502000^Right eye^SCT|||Quillhaven\nOBX|2", 0),
          new Change("^QHREC^MR\n", "^QHREC^MR" + "|".repeat(27) + "N\n", 0),
          new Change("^QHREC^MR\n", "^QHREC^MR\nNTE|1|L|calm, seated\n", 0),
          new Change("OBR|1", "ZDS|study 7\nOBR|1", 0),
          new Change("OBR|1", "ORC|RE|o-1\nOBR|1", 0));

  @TestFactory
  Stream<DynamicTest> takesNothingThatIsTurnedRound() throws IOException {
    return changed(CHANGES);
  }

  @TestFactory
  Stream<DynamicTest> takesWhatStandsBesideSomethingHarmless() throws IOException {
    return changed(HARMLESS);
  }

  private static Stream<DynamicTest> changed(List<Change> changes) throws IOException {
    String message = message();
    return changes.stream()
        .map(
            change ->
                DynamicTest.dynamicTest(
                    change.from() + " " + change.to(),
                    () -> {
                      int at = message.indexOf(change.from());
                      assertTrue(at > 0, change.from());
                      String changed =
                          message.substring(0, at)
                              + change.to()
                              + message.substring(at + change.from().length());
                      assertEquals(FACTS - change.lost(), facts(changed));
                    }));
  }

  private static final String PUPIL =
      """
      MSH|^~\\&|EYE||||20260612104500+0100||ORU^R01^ORU_R01|m-2|P|2.5.1
      PID|1||qh-0417^^^&https://quillhaven.example/people&URI
      OBR|1|||EXAM^Eye examination^L|||20260612101500||||||||||||||||||F
      OBX|1|NM|363953003^Size of pupil^SCT|1|4.5|mm^mm^UCUM|||||F|||||||||362502000^Right eye^SCT
      OBX|2|CWE|lighting^Lighting^99.part|1.1|room^Room light^99.lighting||||||F
      OBX|3|CWE|363953003^Size of pupil^SCT|2|asked-declined^^99.absent||||||X|||||||||362503005^Left eye^SCT
      """;

  @Test
  void readsPartsBySubIdAndWhyThereIsNoValue() {
    Exam exam = read(PUPIL).exams().get(0).exam();
    assertEquals(
        List.of(
            "pupil-size right Size[diameter=4.5 mm, lighting=ROOM]",
            "pupil-size left absent: refused"),
        exam.facts().stream().map(Object::toString).toList());
    assertEquals(
        "https://quillhaven.example/people|qh-0417",
        exam.header().subject().identifier().orElseThrow().toString());
  }

  /** What a part says of its own may be another eye, another method, another state. */
  @Test
  void takesNoWholeWhosePartSaysMoreThanAValue() {
    String part = "room^Room light^99.lighting||||||F";
    assertEquals(2, facts(PUPIL));
    for (String other :
        List.of(
            part + "|||||||||362503005^Left eye^SCT",
            part.replace("||||||F", "||||||D"),
            part.replace("||||||F", "||A||||F"),
            part.replace("room^Room light^99.lighting", "\"\""))) {
      assertEquals(1, facts(PUPIL.replace(part, other)), other);
    }
    assertEquals(1, facts(PUPIL.replace("^99.absent", "^L")));
  }

  /** A comment to the order is one to all of its results. */
  @Test
  void keepsACommentToTheOrderBesideEachResult() throws IOException {
    String commented =
        message().replaceFirst("\nOBX", "\nNTE|1|L|Seen in bed \\\\T\\\\ tired\nOBX");
    Raw bundle = V2Reader.read(commented.getBytes(UTF_8)).orThrow();
    List<Raw.Obj> entries = bundle.objects("entry");
    for (Raw.Obj entry : entries.subList(0, entries.size() - 1)) {
      List<Raw.Obj> notes = entry.object("resource").orElseThrow().objects("note");
      assertEquals("Seen in bed & tired", notes.get(notes.size() - 1).string("text").orElseThrow());
    }
  }

  @Test
  void resolvesEscapes() {
    V2Segment segment = V2Segment.of("NTE|1|L|a\\F\\b\\S\\c\\R\\d\\E\\e\\H\\f\\Z9\\", "|^~\\&");
    assertEquals("a|b^c~d\\ef\\Z9\\", segment.plain(segment.raw(3)));
  }

  @Test
  void refusesWhatIsNoMessageWithResults() throws IOException {
    String message = message();
    assertTrue(V2Reader.isV2(("\u000B" + message + "\u001C\r").getBytes(UTF_8)));
    assertEquals(FACTS, facts("\u000B" + message + "\u001C\r"));
    assertFalse(V2Reader.isV2("{\"MSH\":1}".getBytes(UTF_8)));
    for (String bad :
        List.of(
            "MSH|",
            message + message,
            message.replace("ORU^R01", "ADT^A01"),
            message.replace("|P|2.5.1", "|T|2.5.1"),
            message.replace("|P|2.5.1", "|P|2.5.1||||||ISO IR87"))) {
      assertFalse(V2Reader.read(bad.getBytes(UTF_8)).isOk(), bad);
    }
    byte[] latin =
        message
            .replace("Sitting", "Sitt\u00e9zed")
            .getBytes(java.nio.charset.StandardCharsets.ISO_8859_1);
    assertFalse(V2Reader.read(latin).isOk());
  }
}
