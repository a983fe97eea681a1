package org.isopter.mapper.pool;

import static java.nio.charset.StandardCharsets.ISO_8859_1;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalDate;
import java.time.OffsetDateTime;
import java.time.ZoneOffset;
import java.time.format.DateTimeFormatter;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.Set;
import java.util.SplittableRandom;
import java.util.regex.MatchResult;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import org.isopter.model.catalogue.Catalogue;
import org.isopter.model.exam.Exam;
import org.isopter.model.exam.ExamSampler;
import org.isopter.model.exam.Fact;
import org.isopter.model.exam.Header;
import org.isopter.model.exam.Identifier;
import org.isopter.model.exam.Party;
import org.isopter.model.exam.Status;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** No byte of a pool tells who the persons are: every string of the input that could is sought. */
class NoIdentityTest {

  private static final long SEED = new SplittableRandom().nextLong();

  @TempDir Path folder;

  private final SplittableRandom random = new SplittableRandom(SEED);
  private final Set<String> secrets = new HashSet<>();

  @Test
  void noIdentifierNameDateOrRemarkIsInAnyFile() throws IOException {
    Path pool = folder.resolve("pool");
    Pools.run(Pools.everything(pool, false, false), documents(150));
    assertTrue(secrets.size() > 1_000);
    for (Path file : files(pool)) {
      Set<String> reported = Search.of(secrets).in(Files.readString(file, ISO_8859_1));
      if (file.endsWith("provenance.json")) {
        // The day of the run itself is no secret.
        reported.remove(LocalDate.now(ZoneOffset.UTC).toString());
      }
      assertEquals(Set.of(), reported, () -> file.getFileName() + ", seed " + SEED);
    }
  }

  /**
   * A bundle of another system, with a secret wherever it could name someone. The words of the
   * first two observations may change their values, so that the third alone is read.
   */
  private static final String FOREIGN =
      """
      {"resourceType":"Bundle","type":"searchset","id":"BUNDLE","link":[{"relation":"self",\
      "url":"https://server.example/LINK"}],"entry":[{"fullUrl":"https://server.example/FULL",\
      "resource":{"resourceType":"Patient","id":"PATIENT","identifier":[{"system":\
      "https://giver.example/GIVER","value":"NUMBER"}],"name":[{"family":"FAMILY","given":\
      ["GIVEN"]}],"birthDate":"1950-07-09","gender":"male","address":[{"city":"CITY"}]}},\
      {"resource":{"resourceType":"Observation","id":"OBSERVATION","status":"final",\
      "subject":{"reference":"Patient/PATIENT","display":"DISPLAY"},"encounter":{"reference":\
      "Encounter/ENCOUNTER"},"effectiveDateTime":"2026-03-02T10:00:00Z","performer":[{"reference":\
      "Practitioner/PRACTITIONER","display":"EXAMINER"}],"code":{"coding":[{"system":\
      "http://snomed.info/sct","code":"41633001"}],"text":"CODETEXT"},"bodySite":{"coding":[{"system":\
      "http://snomed.info/sct","code":"362502000"}],"text":"SITETEXT"},"valueQuantity":{"value":17,\
      "unit":"mm[Hg]"},"note":[{"text":"NOTE"}],"device":{"display":"DEVICE"}}},{"resource":\
      {"resourceType":"Observation","id":"PLAIN","status":"final","subject":{"reference":\
      "Patient/PATIENT"},"effectiveDateTime":"2026-03-02T10:00:00Z","code":{"coding":[{"system":\
      "http://snomed.info/sct","code":"41633001"}]},"bodySite":{"coding":[{"system":\
      "http://snomed.info/sct","code":"362502000"}]},"valueQuantity":{"value":17,\
      "unit":"mm[Hg]"},"note":[{"text":"REMARK"}]}},{"resource":\
      {"resourceType":"Observation","id":"BARE","status":"final","subject":{"reference":\
      "Patient/PATIENT"},"effectiveDateTime":"2026-03-02T10:00:00Z","code":{"coding":[{"system":\
      "http://snomed.info/sct","code":"41633001"}]},"bodySite":{"coding":[{"system":\
      "http://snomed.info/sct","code":"362502000"}]},"valueQuantity":{"value":17,\
      "unit":"mm[Hg]"}}},{"resource":\
      {"resourceType":"KEPTTYPE","id":"KEPT","KEPTMEMBER":"KEPTVALUE"}}]}""";

  @Test
  void nothingOfAForeignBundleTellsWho() throws IOException {
    String json = FOREIGN;
    Matcher places = Pattern.compile("[A-Z]{4,}").matcher(FOREIGN);
    for (MatchResult place : places.results().toList()) {
      json = json.replace("/" + place.group(), "/" + secretOf(place.group()));
      json = json.replace("\"" + place.group() + "\"", "\"" + secretOf(place.group()) + "\"");
    }
    secrets.add("1950-07-09");
    secrets.add("2026-03-02");
    String whole = json;
    secrets.forEach(secret -> assertTrue(whole.contains(secret), secret));
    Path pool = folder.resolve("pool");
    PoolResult result =
        Pools.run(Pools.everything(pool, false, false), List.of(Pools.json(json, 1)));
    assertEquals(1, result.counts().facts());
    for (Path file : files(pool)) {
      Set<String> reported = Search.of(secrets).in(Files.readString(file, ISO_8859_1));
      assertEquals(Set.of(), reported, () -> file.getFileName() + " of " + FOREIGN);
    }
  }

  private String secretOf(String place) {
    String secret = "Zq" + place.toLowerCase(Locale.ROOT) + "Zqx";
    secrets.add(secret);
    return secret;
  }

  /** The search itself must be able to find: with identities kept it finds them all. */
  @Test
  void withIdentitiesKeptTheyAreThere() throws IOException {
    Path pool = folder.resolve("pool");
    Pools.run(Pools.everything(pool, true, true), documents(50));
    Set<String> reported = new HashSet<>();
    for (Path file : files(pool)) {
      reported.addAll(Search.of(secrets).in(Files.readString(file, ISO_8859_1)));
    }
    assertEquals(secrets, reported);
  }

  private List<PoolDocument> documents(int count) {
    ExamSampler exams = new ExamSampler(Catalogue.standard().all(), random.split());
    List<PoolDocument> documents = new ArrayList<>();
    for (int i = 1; i <= count; i++) {
      documents.add(Pools.record(known(exams.next()), i));
    }
    return documents;
  }

  /** Returns the examination with names that can be found again wherever they turn up. */
  private Exam known(Exam exam) {
    Header from = exam.header();
    Header header =
        new Header(
            identifier(),
            new Party(Optional.of(identifier()), Optional.of(secret("Name"))),
            Optional.of(Party.named(secret("Doctor"))),
            time(from.performed()),
            from.status(),
            from.setting(),
            from.status() == Status.AMENDED ? Optional.of(identifier()) : Optional.empty(),
            Optional.of(secret("Remark")));
    List<Fact<?>> facts = exam.facts().stream().<Fact<?>>map(this::known).toList();
    return new Exam(header, facts);
  }

  private <V> Fact<V> known(Fact<V> fact) {
    return fact.with(secret("Device"))
        .remarks(List.of(secret("Said")))
        .at(time(fact.at().orElse(OffsetDateTime.parse("2026-02-03T08:00:00Z"))));
  }

  private Identifier identifier() {
    return Identifier.of("https://giver.example/" + secret("system"), secret("id"));
  }

  private String secret(String kind) {
    String text = kind + Long.toString(random.nextLong() & Long.MAX_VALUE, 36);
    secrets.add(text);
    return text;
  }

  /** The day is a secret, as it is written in any form of the input. */
  private OffsetDateTime time(OffsetDateTime time) {
    secrets.add(time.format(DateTimeFormatter.ISO_LOCAL_DATE));
    return time;
  }

  private static List<Path> files(Path pool) throws IOException {
    try (Stream<Path> files = Files.walk(pool)) {
      return files.filter(Files::isRegularFile).toList();
    }
  }
}
