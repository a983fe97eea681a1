package org.isopter.mapper.exchange;

import static java.nio.charset.StandardCharsets.UTF_8;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.TimeUnit;
import org.isopter.mapper.http.FakePause;
import org.isopter.mapper.http.ScriptedServer;
import org.isopter.mapper.http.ScriptedServer.Answer;
import org.isopter.mapper.http.ScriptedServer.Asked;
import org.isopter.mapper.http.ServerException;
import org.isopter.mapper.http.TokenFile;
import org.isopter.mapper.http.TokenSource;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/**
 * Pages of searches (FHIR R4, "Search", 3.1.1.4.20) and exports (HL7 FHIR Bulk Data Access 2.0.0,
 * "Export"), as servers give them, and as they should not.
 */
@Timeout(value = 20, unit = TimeUnit.SECONDS)
class FetcherTest {

  @TempDir Path folder;
  private final Kept kept = new Kept();

  /** Keeps what is fetched. */
  private static final class Kept implements FetchedLines {
    private final List<String> lines = new ArrayList<>();
    private final List<String> deleted = new ArrayList<>();
    private final List<String> troubles = new ArrayList<>();

    @Override
    public void line(byte[] json) {
      lines.add(new String(json, UTF_8));
    }

    @Override
    public void deleted(byte[] json) {
      deleted.add(new String(json, UTF_8));
    }

    @Override
    public void trouble(byte[] json) {
      troubles.add(new String(json, UTF_8));
    }
  }

  private static String page(String next, int entries) {
    String link = "{\"relation\":\"next\",\"url\":\"%s\"}".formatted(next);
    return "{\"resourceType\":\"Bundle\",\"type\":\"searchset\",\"link\":[%s],\"entry\":[%s]}"
        .formatted(
            next.isEmpty() ? "" : link,
            String.join(
                ",",
                java.util.Collections.nCopies(
                    entries, "{\"resource\":{\"resourceType\":\"Observation\"}}")));
  }

  private Fetched fetch(ScriptedServer server, String request) {
    return new Fetcher(server.client(), kept).fetch(request);
  }

  private ServerException refused(ScriptedServer server, String request) {
    return assertThrows(ServerException.class, () -> fetch(server, request));
  }

  @Test
  void followsThePagesOfASearch() {
    try (ScriptedServer server =
        ScriptedServer.answering(
            Answer.of(200, page("?page=2", 3)),
            Answer.of(503, ""),
            Answer.of(200, page("/fhir/Observation?page=3", 2)),
            Answer.of(200, page("", 1)))) {
      assertEquals(new Fetched(3, 6, 0, 0), fetch(server, "Observation?code=a|b"));
      assertEquals(
          List.of("/fhir/Observation?code=a%7Cb", "/fhir/?page=2", "/fhir/?page=2"),
          server.asked().subList(0, 3).stream().map(Asked::uri).toList());
      assertEquals(6, kept.lines.size());
    }
  }

  @Test
  void stopsWherePagesRunInACircle() {
    try (ScriptedServer server =
        ScriptedServer.answering(Answer.of(200, page("/fhir/Observation", 1)))) {
      assertTrue(refused(server, "Observation").fault().seen().contains("there already"));
    }
  }

  @Test
  void followsNoPageToAnotherHost() throws IOException {
    TokenSource token = TokenFile.of(Files.writeString(folder.resolve("token"), "t1"));
    try (ScriptedServer trap = ScriptedServer.answering(Answer.of(200, page("", 1)));
        ScriptedServer server =
            ScriptedServer.answering(Answer.of(200, page(trap.base() + "/x", 1)))) {
      Fetcher careful = new Fetcher(server.client(token, new FakePause()), kept);
      assertThrows(ServerException.class, () -> careful.fetch("Observation"));
      assertEquals(0, trap.asked().size());
      Fetcher allowed = new Fetcher(server.client(token, new FakePause(), trap.host()), kept);
      assertEquals(2, allowed.fetch("Observation").resources());
      assertFalse(trap.asked().get(0).header("Authorization").isPresent());
      assertEquals(Optional.of("Bearer t1"), server.asked().get(0).header("Authorization"));
    }
  }

  @ParameterizedTest
  @ValueSource(
      strings = {
        "{}",
        "{\"resourceType\":\"OperationOutcome\"}",
        "{\"resourceType\":\"Bundle\",\"type\":\"transaction\"}",
        "[]",
        "<html>"
      })
  void takesNothingForAPageThatIsNone(String answer) {
    try (ScriptedServer server = ScriptedServer.answering(Answer.of(200, answer))) {
      refused(server, "Observation");
      assertEquals(List.of(), kept.lines);
    }
  }

  @Test
  void takesASingleResource() {
    String patient = "{\"resourceType\":\"Patient\",\n\"id\":\"1\"}\r\n";
    try (ScriptedServer server = ScriptedServer.answering(Answer.of(200, patient))) {
      assertEquals(1, fetch(server, "Patient/1").resources());
    }
  }

  /** What a history says of deletions, {@code from-fhir} reads of the page as a whole. */
  @Test
  void keepsAPageOfAHistoryWhole() {
    String page = page("", 2).replace("searchset", "history");
    try (ScriptedServer server = ScriptedServer.answering(Answer.of(200, page))) {
      fetch(server, "_history");
      assertEquals(List.of(page), kept.lines);
    }
  }

  @Test
  void writesADocumentOnOneLine() throws IOException {
    ByteArrayOutputStream out = new ByteArrayOutputStream();
    FetchedLines.write("{\r\n\"a\": \"\\n\"\n}".getBytes(UTF_8), out);
    assertEquals("{  \"a\": \"\\n\" }\n", out.toString(UTF_8));
  }

  @Test
  void countsWhatTheServerSaysThatItCannotGive() {
    String page =
        page("", 1)
            .replace(
                "\"entry\":[",
                "\"entry\":[{\"resource\":{\"resourceType\":\"OperationOutcome\"}},");
    try (ScriptedServer server = ScriptedServer.answering(Answer.of(200, page))) {
      assertEquals(new Fetched(1, 1, 0, 1), fetch(server, "Observation"));
      assertEquals(1, kept.troubles.size());
    }
  }

  @Test
  void showsNoQueryOfARequestThatIsRefused() {
    try (ScriptedServer server = ScriptedServer.answering(Answer.of(404, ""))) {
      ServerException refused = refused(server, "Observation?patient.name=Somebody");
      assertFalse(refused.toString().contains("Somebody"), refused.toString());
      assertEquals("status 404", refused.fault().seen());
    }
  }

  /** An export as a busy server gives it. */
  private static final class Export implements ScriptedServer.Script {
    private final String manifest;
    private int polls;
    private int files;

    Export(String manifest) {
      this.manifest = manifest;
    }

    @Override
    public Answer answer(Asked asked, int before) {
      return switch (asked.uri().replaceAll("\\?.*", "")) {
        case "/fhir/Patient/$export" -> Answer.of(202, "Content-Location", "/fhir/status");
        case "/fhir/status" -> asked.method().equals("DELETE") ? Answer.of(202, "") : poll();
        case "/fhir/observations" ->
            files++ == 0
                ? Answer.of(200, "{\"resourceType\":\"Observation\"}\n{\"resou")
                : Answer.of(
                    200,
                    "{\"resourceType\":\"Observation\"}\n\n{\"resourceType\":\"Observation\"}");
        case "/fhir/deleted" -> Answer.of(200, "{\"resourceType\":\"Bundle\",\"entry\":[{},{}]}\n");
        default -> Answer.of(200, "{\"resourceType\":\"OperationOutcome\"}\n");
      };
    }

    private Answer poll() {
      return switch (polls++) {
        case 0 -> Answer.of(202, "Retry-After", "9");
        case 1 -> Answer.of(429, "Retry-After", "11");
        case 2 -> Answer.of(202, "X-Progress", "half");
        default -> Answer.of(200, manifest);
      };
    }
  }

  private static String manifest(String output) {
    return """
        {"requiresAccessToken":true,"output":[{"type":"Observation","url":"%s","count":2}],
        "deleted":[{"url":"/fhir/deleted"}],"error":[{"url":"/fhir/errors"}]}"""
        .formatted(output);
  }

  @Test
  void waitsForAnExportAndFetchesItsFiles() {
    try (ScriptedServer server = ScriptedServer.of(new Export(manifest("/fhir/observations")))) {
      FakePause pause = new FakePause();
      Fetcher fetcher = new Fetcher(server.client(TokenSource.NONE, pause), kept);
      assertEquals(new Fetched(1, 2, 2, 1), fetcher.fetch("Patient/$export?_type=Observation"));
      assertEquals(
          List.of(9L, 11L, 2L, 0L), pause.waits().stream().map(Duration::toSeconds).toList());
      assertEquals(Optional.of("respond-async"), server.asked().get(0).header("Prefer"));
      assertEquals(2, kept.lines.size());
      assertEquals(1, kept.deleted.size());
      assertEquals(1, kept.troubles.size());
      assertEquals("DELETE", server.asked().get(server.asked().size() - 1).method());
    }
  }

  @Test
  void fetchesNoFileFromAnotherHostThatWantsTheToken() {
    try (ScriptedServer trap = ScriptedServer.answering(Answer.of(200, "{}"));
        ScriptedServer server = ScriptedServer.of(new Export(manifest(trap.base() + "/o")))) {
      Fetcher fetcher = new Fetcher(server.client(trap.host()), kept);
      ServerException refused =
          assertThrows(ServerException.class, () -> fetcher.fetch("Patient/$export"));
      assertTrue(refused.fault().seen().contains("wants the token"), refused.toString());
      assertEquals(0, trap.asked().size());
    }
  }

  @Test
  void doesNotTakeHalfAFileForAll() {
    try (ScriptedServer server = ScriptedServer.of(new Export(manifest("/fhir/errors")))) {
      ServerException refused = refused(server, "Patient/$export");
      assertTrue(refused.fault().seen().contains("1 lines, where 2"), refused.toString());
      assertEquals(List.of(), kept.lines);
    }
  }

  @Test
  void saysThatAServerGivesNoExport() {
    try (ScriptedServer server = ScriptedServer.answering(Answer.of(200, "{}"))) {
      assertEquals("status 200", refused(server, "$export").fault().seen());
    }
    try (ScriptedServer server = ScriptedServer.answering(Answer.of(202, ""))) {
      assertEquals("no Content-Location", refused(server, "$export").fault().seen());
    }
  }

  /** An export that never ends is over with the time that there is. */
  @Test
  void doesNotWaitForEver() {
    try (ScriptedServer server =
        ScriptedServer.answering(
            Answer.of(202, "Content-Location", "/fhir/status"),
            Answer.of(202, "Retry-After", "1200"))) {
      ServerException refused = refused(server, "$export");
      assertTrue(refused.fault().advice().contains("--time-limit"), refused.toString());
      assertTrue(server.asked().size() < 9);
    }
  }
}
