package org.isopter.mapper.http;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.net.InetAddress;
import java.net.InetSocketAddress;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.concurrent.TimeUnit;
import org.isopter.mapper.http.ScriptedServer.Answer;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/** Requests that are repeated, passed on, or turned away (RFC 9110, RFC 6585, RFC 6750). */
@Timeout(value = 20, unit = TimeUnit.SECONDS)
class ServerClientTest {

  private static final String SECRET = "s3cret-token";

  @TempDir Path folder;

  private static String text(ServerClient client) {
    return client.send(
        ServerRequest.get(client.address().at("Patient?name=x"), ServerRequest.FHIR),
        ServerReply::text);
  }

  private static ServerException refused(ServerClient client) {
    return assertThrows(ServerException.class, () -> text(client));
  }

  private TokenSource token() throws java.io.IOException {
    return TokenFile.of(Files.writeString(folder.resolve("token"), SECRET + "\n"));
  }

  @Test
  void waitsAsLongAsTheServerAsksFor() {
    try (ScriptedServer server =
        ScriptedServer.answering(
            Answer.of(429, "Retry-After", "7"),
            Answer.of(503, "Retry-After", "Sat, 28 Nov 2026 08:00:30 GMT"),
            Answer.of(200, "{}"))) {
      FakePause pause = new FakePause();
      assertEquals("{}", text(server.client(TokenSource.NONE, pause)));
      assertEquals(List.of(Duration.ofSeconds(7), Duration.ofSeconds(23)), pause.waits());
    }
  }

  @Test
  void waitsLongerEachTimeAndLeavesOutAPartAtRandom() {
    try (ScriptedServer server = ScriptedServer.answering(Answer.of(503, ""))) {
      FakePause pause = new FakePause();
      ServerException refused = refused(server.client(TokenSource.NONE, pause));
      assertEquals(8, server.asked().size());
      assertEquals(
          List.of(375L, 750L, 1500L, 3000L, 6000L, 12000L, 24000L),
          pause.waits().stream().map(Duration::toMillis).toList());
      assertEquals("status 503, for the 8th time", refused.fault().seen());
      assertTrue(refused.isOfAll());
    }
  }

  @Test
  void stopsWhereTheServerAsksForMoreTimeThanThereIs() {
    try (ScriptedServer server = ScriptedServer.answering(Answer.of(429, "Retry-After", "86400"))) {
      ServerException refused = refused(server.client());
      assertEquals(1, server.asked().size());
      assertTrue(refused.fault().advice().contains("--time-limit"), refused.toString());
    }
  }

  @ParameterizedTest
  @CsvSource({"400,1", "404,1", "409,3", "412,1", "422,1", "500,3"})
  void repeatsOnlyWhatMayPass(int status, int times) {
    try (ScriptedServer server = ScriptedServer.answering(Answer.of(status, "no"))) {
      assertEquals("no", text(server.client()));
      assertEquals(times, server.asked().size());
    }
  }

  @Test
  void goesWhereTheServerPassesARequestOnWithinItself() throws Exception {
    try (ScriptedServer server =
        ScriptedServer.answering(
            Answer.of(307, "Location", "/fhir/elsewhere"), Answer.of(200, "{}"))) {
      assertEquals("{}", text(server.client(token(), new FakePause())));
      assertEquals("/fhir/elsewhere", server.asked().get(1).uri());
      assertTrue(server.asked().get(1).header("Authorization").isPresent());
    }
  }

  @Test
  void goesToNoOtherHost() throws Exception {
    try (ScriptedServer other = ScriptedServer.answering(Answer.of(200, "{}"));
        ScriptedServer server =
            ScriptedServer.answering(Answer.of(302, "Location", other.base() + "/trap"))) {
      ServerException refused = refused(server.client(token(), new FakePause()));
      assertEquals(0, other.asked().size());
      assertEquals("a link to " + other.host() + " over http", refused.fault().seen());
      assertTrue(refused.fault().advice().endsWith("--allow-host " + other.host()));
    }
  }

  @Test
  void givesAHostThatIsAllowedNoToken() throws Exception {
    try (ScriptedServer other = ScriptedServer.answering(Answer.of(200, "{}"));
        ScriptedServer server =
            ScriptedServer.answering(Answer.of(302, "Location", other.base() + "/trap"))) {
      assertEquals("{}", text(server.client(token(), new FakePause(), other.host())));
      assertTrue(server.asked().get(0).header("Authorization").isPresent());
      assertFalse(other.asked().get(0).header("Authorization").isPresent());
    }
  }

  @ParameterizedTest
  @ValueSource(
      strings = {
        "http://user@127.0.0.1/",
        "file:///etc/passwd",
        "javascript:1",
        "//evil.example/x"
      })
  void followsNoStrangeLink(String link) {
    try (ScriptedServer server = ScriptedServer.answering(Answer.of(302, "Location", link))) {
      assertTrue(refused(server.client()).isOfAll());
      assertEquals(1, server.asked().size());
    }
  }

  @Test
  void doesNotRunInCircles() {
    try (ScriptedServer server =
        ScriptedServer.answering(Answer.of(302, "Location", "/fhir/again"))) {
      assertTrue(refused(server.client()).fault().seen().contains("for ever"));
      assertEquals(6, server.asked().size());
    }
  }

  @Test
  void passesNothingOnThatItSends() {
    try (ScriptedServer server =
        ScriptedServer.answering(Answer.of(307, "Location", "/fhir/elsewhere"))) {
      ServerClient client = server.client();
      ServerRequest request = ServerRequest.transaction(client.address().base(), "{}");
      assertThrows(ServerException.class, () -> client.send(request, ServerReply::text));
      assertEquals(1, server.asked().size());
    }
  }

  @Test
  void readsATokenThatIsNotAcceptedAgain() throws Exception {
    Path file = folder.resolve("token");
    TokenSource tokens = token();
    try (ScriptedServer server =
        ScriptedServer.of(
            (asked, before) -> {
              boolean fresh = asked.header("Authorization").equals(Optional.of("Bearer fresh"));
              return fresh ? Answer.of(200, "{}") : Answer.of(401, "");
            })) {
      Files.writeString(file, "fresh");
      assertEquals("{}", text(server.client(tokens, new FakePause())));
      assertEquals(2, server.asked().size());
    }
  }

  @Test
  void showsNoTokenThoughTheServerRepeatsIt() throws Exception {
    String outcome =
        "{\"resourceType\":\"OperationOutcome\",\"issue\":[{\"code\":\"security\",\"diagnostics\":"
            + "\"bad token "
            + SECRET
            + "\\u001b[31m\"}]}";
    try (ScriptedServer server = ScriptedServer.answering(Answer.of(403, outcome))) {
      ServerException refused = refused(server.client(token(), new FakePause()));
      assertTrue(refused.fault().seen().contains("bad token (token)"), refused.toString());
      assertFalse(refused.toString().contains(SECRET));
      assertFalse(refused.toString().contains("name=x"), "the query names a person");
    }
  }

  @Test
  void sendsNoTokenWhereOthersCanReadIt() throws Exception {
    ServerAddress open = ServerAddress.of("http://fhir.example/r4", List.of()).orThrow();
    TokenSource tokens = token();
    assertThrows(
        ServerException.class,
        () -> new ServerClient(open, FakePause.HTTP, tokens, FakePause.QUICK, new FakePause()));
  }

  @ParameterizedTest
  @ValueSource(strings = {"", "two words", "a\nb", "Bearer x", "ä"})
  void takesNoTokenThatWouldBreakAHeader(String text) throws Exception {
    Path file = Files.writeString(folder.resolve("token"), text);
    ServerException refused = assertThrows(ServerException.class, () -> TokenFile.of(file));
    assertFalse(text.length() > 2 && refused.getMessage().contains(text));
  }

  @Test
  void saysAtOnceThatNobodyListens() {
    ScriptedServer server = ScriptedServer.answering(Answer.of(200, "{}"));
    ServerClient client = server.client();
    server.close();
    assertEquals("nobody who listens there", refused(client).fault().seen());
  }

  @ParameterizedTest
  @ValueSource(
      strings = {
        "",
        "host",
        "ftp://host/fhir",
        "https://",
        "https://u:p@host/",
        "http://h/?q",
        "http://h ost"
      })
  void takesNoAddressThatIsNone(String base) {
    assertFalse(ServerAddress.of(base, List.of()).isOk());
  }

  @Test
  void escapesWhatMayNotStandInAnAddress() {
    ServerAddress address = ServerAddress.of("https://host.example/r4/", List.of()).orThrow();
    assertEquals(
        "https://host.example/r4/Observation?code=http://loinc.org%7C56844-4&x=%C3%A4%20%23",
        address.at("Observation?code=http://loinc.org|56844-4&x=ä #").toString());
    assertThrows(ServerException.class, () -> address.at("https://other.example/Patient"));
    assertThrows(ServerException.class, () -> address.at("http://host.example/r4/Patient"));
  }

  private static ServerClient proxied(
      ScriptedServer proxy, String base, List<String> hosts, TokenSource tokens) {
    int port = proxy.base().getPort();
    return new ServerClient(
        ServerAddress.of(base, hosts).orThrow(),
        HttpClients.of(
            Optional.empty(),
            Optional.of(new InetSocketAddress(InetAddress.getLoopbackAddress(), port))),
        tokens,
        FakePause.QUICK,
        new FakePause());
  }

  @Test
  void goesByAProxy() {
    try (ScriptedServer proxy = ScriptedServer.answering(Answer.of(200, "{}"))) {
      assertEquals(
          "{}", text(proxied(proxy, "http://fhir.example/r4", List.of(), TokenSource.NONE)));
      assertEquals(
          Map.of("Host", List.of("fhir.example")),
          Map.of("Host", proxy.asked().get(0).headers().getOrDefault("Host", List.of())));
    }
  }

  /** A link to a host that is allowed goes by the proxy as well, and no other link does. */
  @Test
  void goesByTheProxyToTheHostsThatAreAllowedAlone() {
    try (ScriptedServer proxy =
        ScriptedServer.answering(
            Answer.of(302, "Location", "http://files.example/page"), Answer.of(200, "{}"))) {
      String base = "http://fhir.example/r4";
      assertEquals("{}", text(proxied(proxy, base, List.of("files.example"), TokenSource.NONE)));
      assertEquals(Optional.of("files.example"), proxy.asked().get(1).header("Host"));
    }
    try (ScriptedServer proxy =
        ScriptedServer.answering(Answer.of(302, "Location", "http://files.example/page"))) {
      refused(proxied(proxy, "http://fhir.example/r4", List.of(), TokenSource.NONE));
      assertEquals(1, proxy.asked().size());
    }
  }

  /** A proxy would read the token, also on the way to a server on this machine. */
  @Test
  void showsNoTokenToAProxy() throws Exception {
    TokenSource token = token();
    try (ScriptedServer proxy = ScriptedServer.answering(Answer.of(200, "{}"))) {
      for (String base : List.of("http://127.0.0.1:1/r4", "http://fhir.example/r4")) {
        assertThrows(
            ServerException.class, () -> proxied(proxy, base, List.of("files.example"), token));
      }
      assertEquals(
          "https",
          proxied(proxy, "https://fhir.example/r4", List.of(), token).address().base().getScheme());
      assertEquals(0, proxy.asked().size());
    }
  }
}
