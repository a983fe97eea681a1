package org.isopter.mapper.message;

import static java.nio.charset.StandardCharsets.UTF_8;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.time.OffsetDateTime;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import org.isopter.mapper.foreign.ForeignReader;
import org.isopter.mapper.foreign.reading.Options;
import org.isopter.mapper.foreign.reading.ReadExam;
import org.isopter.mapper.json.Raw;
import org.isopter.mapper.v2.V2Reader;
import org.isopter.model.catalogue.Catalogue;
import org.isopter.model.catalogue.Pressures;
import org.isopter.model.exam.Exam;
import org.isopter.model.exam.Fact;
import org.isopter.model.exam.FactKey;
import org.isopter.model.exam.Header;
import org.isopter.model.exam.Identifier;
import org.isopter.model.exam.Party;
import org.isopter.model.exam.Status;
import org.isopter.model.simulate.Cohort;
import org.isopter.model.value.Absence;
import org.isopter.model.value.Fault;
import org.isopter.model.value.Quantity;
import org.isopter.model.value.Result;
import org.isopter.model.value.Site;
import org.isopter.model.value.Unit;
import org.junit.jupiter.api.Test;

/**
 * Messages with results by HL7 v2.5.1: segments and their fields by chapters 3, 4 and 7, escapes by
 * section 2.7, times by section 2A.3.22; and the law that a message gives back what it holds.
 */
class MessageWriterTest {

  private static final MessageWriter WRITER = new MessageWriter();
  private static final ForeignReader READER =
      new ForeignReader(Catalogue.standard(), Options.usual());
  private static final int PERSONS = 100;

  /** Reads a message and returns each fact with its time. */
  private static List<String> back(String message) {
    Raw raw = V2Reader.read(message.getBytes(UTF_8)).orThrow();
    return READER.readTogether(List.of(raw)).exams().stream()
        .map(ReadExam::exam)
        .flatMap(exam -> timed(exam).stream())
        .toList();
  }

  private static List<String> timed(Exam exam) {
    return exam.facts().stream().map(fact -> timed(fact, exam.header())).toList();
  }

  private static String timed(Fact<?> fact, Header header) {
    return fact.withoutTime().withoutDevice() + " at " + fact.at().orElse(header.performed());
  }

  /** Every fact comes back as it was, or is named; returns how many come back. */
  private static int checkLaw(Exam exam) {
    ResultMessage message = WRITER.write(exam).orThrow();
    Set<String> named = new HashSet<>(message.left().stream().map(Fault::path).toList());
    List<String> wanted = new ArrayList<>();
    List<FactKey> keys = exam.keys();
    for (int i = 0; i < keys.size(); i++) {
      Fact<?> fact = exam.facts().get(i);
      if (named.contains("findings." + keys.get(i))) {
        continue;
      }
      wanted.add(timed(fact, exam.header()));
      assertEquals(
          fact.device().isPresent(), named.contains("findings." + keys.get(i) + ".device"));
    }
    assertEquals(
        wanted.stream().sorted().toList(), back(message.text()).stream().sorted().toList());
    assertEquals(wanted.size(), message.facts());
    return wanted.size();
  }

  @Test
  void writesTheSameBytesEachTime() throws IOException {
    for (Exam exam : DemoRecords.all().subList(0, 4)) {
      assertEquals(
          WRITER.write(exam).orThrow().text(), new MessageWriter().write(exam).orThrow().text());
    }
  }

  @Test
  void givesBackEveryFactOfTheDemoOrNamesIt() throws IOException {
    List<Exam> exams = DemoRecords.all();
    assertEquals("369 of 404", counts(exams));
  }

  @Test
  void givesBackEveryFactOfSixtySampledRecordsOrNamesIt() {
    List<Exam> exams = new Cohort(PERSONS, 7).exams().limit(60).toList();
    assertEquals(60, exams.size());
    assertEquals("2220 of 2315", counts(exams));
  }

  private static String counts(List<Exam> exams) {
    int written = exams.stream().mapToInt(MessageWriterTest::checkLaw).sum();
    int all = exams.stream().mapToInt(exam -> exam.facts().size()).sum();
    return written + " of " + all;
  }

  private static Header header() {
    return Header.of(
        Identifier.of("https://quillhaven.example/records", "r|1"),
        Party.of(Identifier.of("https://quillhaven.example/people", "p&1")),
        OffsetDateTime.parse("2026-03-03T09:10:00+05:30"));
  }

  private static Fact<?> pressure(Site site, String text) {
    return Fact.of(Pressures.INTRAOCULAR, site, Quantity.of(text, Unit.MM_HG));
  }

  private static List<String> segments(Exam exam) {
    return List.of(WRITER.write(exam).orThrow().text().split("\r", -1));
  }

  @Test
  void writesFieldsByTheStandard() {
    Fact<?> seen = pressure(Site.LEFT, "16.50").remarks(List.of("calm|seated^red~eye\\lid&ok"));
    List<String> segments = segments(new Exam(header(), List.of(seen)));
    assertTrue(
        segments
            .get(0)
            .matches(
                "MSH\\|\\^~\\\\&\\|ISOPTER\\|\\|\\|\\|20260303091000\\+0530\\|\\|ORU\\^R01\\^ORU_R01"
                    + "\\|[0-9a-f]{20}\\|P\\|2\\.5\\.1\\|{6}UNICODE UTF-8"),
        segments.get(0));
    assertEquals(
        "PID|1||p\\T\\1^^^&https://quillhaven.example/people&URI||^^^^^^U", segments.get(1));
    assertTrue(
        segments.get(2).startsWith("OBR|1||r\\F\\1^^https://quillhaven.example/records^URI|EXAM^"));
    List<String> fields = List.of(segments.get(3).split("\\|", -1));
    assertEquals("NM", fields.get(2));
    assertTrue(fields.get(3).contains("41633001^Intraocular pressure (observable entity)^SCT"));
    assertEquals("16.50", fields.get(5));
    assertEquals("mm[Hg]^mm[Hg]^UCUM", fields.get(6));
    assertEquals("F", fields.get(11));
    assertEquals("20260303091000+0530", fields.get(14));
    assertEquals("362503005^Entire left eye (body structure)^SCT", fields.get(20));
    assertEquals("NTE|1|L|calm\\F\\seated\\S\\red\\R\\eye\\E\\lid\\T\\ok", segments.get(4));
  }

  /** HL7 table 0085: X, results cannot be obtained for this observation. */
  @Test
  void writesWhyThereIsNoValue() {
    Fact<?> refused = Fact.absent(Pressures.INTRAOCULAR, Site.RIGHT, Absence.REFUSED);
    Exam exam = new Exam(header(), List.of(refused));
    List<String> fields = List.of(segments(exam).get(3).split("\\|", -1));
    assertEquals("asked-declined^Asked But Declined^99.absent", fields.get(5));
    assertEquals("X", fields.get(11));
    assertEquals(1, checkLaw(exam));
  }

  @Test
  void refusesWhatHasNoMessage() {
    Header known = header();
    Fact<?> seen = pressure(Site.LEFT, "16");
    Header nameless = Header.of(known.id(), Party.named("Ada Fennimore"), known.performed());
    Result<ResultMessage> noId = WRITER.write(new Exam(nameless, List.of(seen)));
    assertEquals("subject", noId.faults().get(0).path());
  }

  private static List<List<String>> results(String message) {
    return List.of(message.split("\r", -1)).stream()
        .filter(segment -> segment.startsWith("OBX"))
        .map(segment -> List.of((segment + "|".repeat(20)).split("\\|", -1)))
        .toList();
  }

  /** What a result is known by, and its status, by the letter of HL7 table 0085. */
  private static List<String> statuses(String message) {
    return results(message).stream()
        .map(one -> one.get(20).replaceAll("\\^.*", "") + " " + one.get(5) + " " + one.get(11))
        .toList();
  }

  private static final String RIGHT = "362502000";
  private static final String LEFT = "362503005";

  @Test
  void takesBackEachResultOfARecordThatWasEnteredInError() throws IOException {
    for (Exam exam : DemoRecords.all()) {
      String sent = WRITER.write(exam).orThrow().text();
      Exam wrong = new Exam(exam.header().enteredInError(), exam.facts());
      ResultMessage message = WRITER.write(wrong).orThrow();
      List<List<String>> before = results(sent);
      List<List<String>> after = results(message.text());
      assertEquals(before.size(), after.size());
      for (int i = 0; i < before.size(); i++) {
        for (int field : List.of(1, 3, 4, 14, 17, 20)) {
          assertEquals(before.get(i).get(field), after.get(i).get(field));
        }
        assertEquals("D", after.get(i).get(11));
        assertEquals("", after.get(i).get(5));
      }
      assertEquals(0, message.facts());
      assertEquals(List.of(), back(message.text()));
    }
  }

  @Test
  void correctsWhatWasSentBeforeUnderItsSubId() {
    Exam old = new Exam(header(), List.of(pressure(Site.RIGHT, "14"), pressure(Site.LEFT, "16")));
    Fact<?> apart = Fact.absent(Pressures.INTRAOCULAR, Site.RIGHT, Absence.REFUSED);
    Exam without = new Exam(header(), List.of(pressure(Site.LEFT, "17")));
    ResultMessage message = WRITER.writeAfter(without, old).orThrow();
    assertEquals(List.of(RIGHT + "  D", LEFT + " 17 C"), statuses(message.text()));
    assertEquals(
        results(WRITER.write(old).orThrow().text()).stream().map(one -> one.get(4)).toList(),
        results(message.text()).stream().map(one -> one.get(4)).toList());
    assertEquals(1, back(message.text()).size());
    ResultMessage more = WRITER.writeAfter(old, without).orThrow();
    assertEquals(List.of(RIGHT + " 14 F", LEFT + " 16 C"), statuses(more.text()));
    assertEquals(2, back(more.text()).size());
    assertEquals(1, checkLaw(new Exam(header(), List.of(apart))));
  }

  @Test
  void takesBackTheOrderOfTheRecordThatIsAmended() {
    Exam old = new Exam(header(), List.of(pressure(Site.RIGHT, "14")));
    Header first = header();
    Header second =
        new Header(
            Identifier.of("https://quillhaven.example/records", "r-2"),
            first.subject(),
            Optional.empty(),
            first.performed(),
            Status.AMENDED,
            Optional.empty(),
            Optional.of(first.id()),
            Optional.empty());
    Exam amended = new Exam(second, List.of(pressure(Site.RIGHT, "41")));
    String message = WRITER.writeAfter(amended, old).orThrow().text();
    assertEquals(List.of(RIGHT + "  D", RIGHT + " 41 C"), statuses(message));
    List<String> orders =
        List.of(message.split("\r", -1)).stream().filter(one -> one.startsWith("OBR")).toList();
    assertTrue(orders.get(0).startsWith("OBR|1||r\\F\\1^"), orders.get(0));
    assertTrue(orders.get(1).startsWith("OBR|1||r-2^"), orders.get(1));
    assertEquals(1, back(message).size());
  }

  /** The worst of mistakes: the results of one person in the record of another. */
  @Test
  void takesBackFromThePersonThatItWasSentOf() {
    Exam old = new Exam(header(), List.of(pressure(Site.RIGHT, "14")));
    Header right =
        Header.of(
            header().id(),
            Party.of(Identifier.of("https://quillhaven.example/people", "p-2")),
            header().performed());
    Exam moved = new Exam(right, List.of(pressure(Site.RIGHT, "14")));
    String message = WRITER.writeAfter(moved, old).orThrow().text();
    List<String> said =
        List.of(message.split("\r", -1)).stream()
            .filter(one -> one.matches("(PID|OBX).*"))
            .map(one -> one.startsWith("PID") ? one.replaceAll("\\^.*", "") : statuses(one) + "")
            .toList();
    assertEquals(
        List.of("PID|1||p\\T\\1", "[" + RIGHT + "  D]", "PID|1||p-2", "[" + RIGHT + " 14 F]"),
        said);
    assertEquals(1, back(message).size());
  }

  /** HL7 table 0085: P, preliminary; a reader of final results does not take it for one. */
  @Test
  void saysThatARecordIsPreliminary() {
    Header first = header();
    Header early =
        new Header(
            first.id(),
            first.subject(),
            Optional.empty(),
            first.performed(),
            Status.PRELIMINARY,
            Optional.empty(),
            Optional.empty(),
            Optional.empty());
    ResultMessage message =
        WRITER.write(new Exam(early, List.of(pressure(Site.RIGHT, "14")))).orThrow();
    assertTrue(
        statuses(message.text()).stream().allMatch(one -> one.endsWith(" P")), message.text());
    assertEquals(message.facts(), back(message.text()).size());
  }

  @Test
  void namesWhatAMessageLeavesOut() {
    Fact<?> eye = pressure(Site.LEFT, "16").with("Tonometer of room 3");
    Fact<?> doubted = pressure(Site.RIGHT, "17").remarks(List.of("This is the left eye"));
    Exam exam = new Exam(header(), List.of(eye, doubted));
    List<String> left =
        WRITER.write(exam).orThrow().left().stream().map(Fault::path).sorted().toList();
    assertEquals(
        List.of("findings.intraocular-pressure.left.device", "findings.intraocular-pressure.right"),
        left);
    assertEquals(1, checkLaw(exam));
    assertFalse(WRITER.write(exam).orThrow().text().contains("left eye\r"));
  }
}
