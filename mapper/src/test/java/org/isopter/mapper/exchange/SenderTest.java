package org.isopter.mapper.exchange;

import static java.nio.charset.StandardCharsets.UTF_8;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.HashSet;
import java.util.List;
import java.util.Set;
import java.util.concurrent.TimeUnit;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import org.isopter.mapper.exchange.Sender.Sent;
import org.isopter.mapper.http.ScriptedServer;
import org.isopter.mapper.http.ScriptedServer.Answer;
import org.isopter.mapper.http.ServerException;
import org.isopter.mapper.json.Raw;
import org.isopter.mapper.json.RawJson;
import org.isopter.model.value.Fault;
import org.isopter.model.value.FaultException;
import org.isopter.model.value.Result;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;

/**
 * Transactions that are stored once, however often they are sent and wherever a run stops (FHIR R4,
 * "RESTful API", transactions, conditional update and create, version aware updates).
 */
@Timeout(value = 20, unit = TimeUnit.SECONDS)
class SenderTest {

  @TempDir Path folder;
  private final StoringServer store = new StoringServer();

  private static String entry(String name, String value, String... references) {
    String members =
        Arrays.stream(references)
            .map(to -> "{\"reference\":\"urn:uuid:" + to + "\"}")
            .collect(Collectors.joining(","));
    return """
        {"fullUrl":"urn:uuid:%s","resource":{"resourceType":"Observation","valueString":"%s",
        "hasMember":[%s]},"request":{"method":"PUT","url":"Observation?identifier=s%%7C%s"}}"""
        .formatted(name, value, members, name);
  }

  private static String bundle(String... entries) {
    return "{\"resourceType\":\"Bundle\",\"type\":\"transaction\",\"entry\":["
        + String.join(",", entries)
        + "]}";
  }

  private static final String EXAM =
      bundle(entry("panel", "all", "a", "b"), entry("a", "1.50"), entry("b", "2"));

  private Journal journal(ScriptedServer server) {
    return Journal.open(folder.resolve("sent"), server.base());
  }

  private Result<Sent> send(ScriptedServer server, String bundle, SendPlan plan)
      throws IOException {
    try (Journal journal = journal(server)) {
      return new Sender(server.client(), journal, plan).send(bundle.getBytes(UTF_8));
    }
  }

  private Sent sent(ScriptedServer server, String bundle) throws IOException {
    return send(server, bundle, SendPlan.USUAL).orThrow();
  }

  private ScriptedServer server() {
    return ScriptedServer.of((asked, before) -> store.answer(asked));
  }

  @Test
  void sendsWhatTheJournalDoesNotKnow() throws IOException {
    try (ScriptedServer server = server()) {
      assertEquals(new Sent(3, 3, false), sent(server, EXAM));
      assertEquals(new Sent(3, 0, true), sent(server, EXAM));
      assertEquals(1, server.asked().size());
      assertEquals(3, store.writes());
      assertEquals("application/fhir+json", server.asked().get(0).header("Content-type").get());
    }
  }

  /** Wherever the last line of a journal was cut, what it says is whole, and the rest is sent. */
  @Test
  void goesOnWhereverItWasKilled() throws IOException {
    try (ScriptedServer server = server()) {
      sent(server, bundle(entry("x", "1")));
      sent(server, EXAM);
      byte[] whole = Files.readAllBytes(folder.resolve("sent"));
      int first = new String(whole, UTF_8).indexOf('\n') + 1;
      for (int length = 0; length <= whole.length; length += length < first ? first : 61) {
        Files.write(folder.resolve("sent"), Arrays.copyOf(whole, length));
        assertFalse(sent(server, bundle(entry("x", "1"))).created() > 0);
        assertFalse(sent(server, EXAM).created() > 0);
        assertTrue(sent(server, EXAM).before());
      }
      assertEquals(4, store.writes());
      assertEquals(4, store.stored().size());
    }
  }

  @Test
  void storesNothingTwiceWhereAnAnswerIsLost() throws IOException {
    try (ScriptedServer server =
        ScriptedServer.of(
            (asked, before) -> {
              Answer answer = store.answer(asked);
              return before == 0 ? Answer.of(200, answer.body().substring(9)) : answer;
            })) {
      assertEquals(new Sent(3, 0, false), sent(server, EXAM));
      assertEquals(2, server.asked().size());
      assertEquals(3, store.writes());
    }
  }

  @Test
  void sendsWhatIsTooLargeInPartsThatReferToWhatIsThere() throws IOException {
    String[] entries =
        IntStream.rangeClosed(0, 20)
            .mapToObj(i -> i == 0 ? entry("all", "p", names()) : entry("n" + i, "v" + i))
            .toArray(String[]::new);
    try (ScriptedServer server = server()) {
      assertEquals(
          new Sent(21, 21, false),
          send(server, bundle(entries), new SendPlan(1500, false)).orThrow());
      assertTrue(server.asked().size() > 2);
      Set<String> places = new HashSet<>();
      server.asked().forEach(asked -> assertTrue(asked.body().length() < 1700, asked.body()));
      Raw.Obj panel =
          store.stored().values().stream()
              .filter(one -> one.objects("hasMember").size() == 20)
              .findFirst()
              .orElseThrow();
      for (Raw.Obj member : panel.objects("hasMember")) {
        String reference = member.string("reference").orElseThrow();
        places.add(reference);
        assertTrue(
            store.stored().containsKey(reference) || reference.startsWith("urn:uuid:"), reference);
      }
      assertEquals(20, places.size());
    }
  }

  private static String[] names() {
    return IntStream.rangeClosed(1, 20).mapToObj(i -> "n" + i).toArray(String[]::new);
  }

  /** The part that names all others comes last, so that half of a record is not taken for it. */
  @Test
  void goesOnBetweenTheParts() throws IOException {
    SendPlan small = new SendPlan(300, false);
    try (ScriptedServer server =
        ScriptedServer.of(
            (asked, before) -> before == 2 ? Answer.of(422, "") : store.answer(asked))) {
      assertFalse(send(server, EXAM, small).isOk());
      assertEquals(2, store.stored().size());
      assertEquals(new Sent(3, 1, false), send(server, EXAM, small).orThrow());
      assertEquals(4, server.asked().size());
      assertTrue(server.asked().get(3).body().contains("\"all\""));
    }
  }

  @Test
  void cannotDivideACircle() throws IOException {
    String circle = bundle(entry("a", "1", "b"), entry("b", "2", "a"));
    try (ScriptedServer server = server()) {
      Fault fault = send(server, circle, new SendPlan(10, false)).faults().get(0);
      assertTrue(fault.seen().contains("circle"), fault.toString());
      assertTrue(sent(server, circle).created() == 2);
    }
  }

  @Test
  void replacesOnlyTheVersionThatWasStored() throws IOException {
    String amended = EXAM.replace("1.50", "1.25");
    try (ScriptedServer server = server()) {
      sent(server, EXAM);
      assertEquals(new Sent(3, 0, false), sent(server, amended));
      assertEquals(4, store.writes());
      Raw a = RawJson.OWN.read(server.asked().get(1).body()).orThrow().objects("entry").get(1);
      Raw request = a.object("request").orElseThrow();
      assertEquals("Observation/2", request.string("url").get());
      assertEquals("W/\"1\"", request.string("ifMatch").get());
      assertEquals("2", a.object("resource").orElseThrow().string("id").get());
    }
  }

  /** Neither is an older file put back unseen, nor is it left out unsaid. */
  @Test
  void refusesAVersionThatHasBeenReplaced() throws IOException {
    try (ScriptedServer server = server()) {
      sent(server, EXAM);
      sent(server, EXAM.replace("1.50", "1.25"));
      Fault fault = send(server, EXAM, SendPlan.USUAL).faults().get(0);
      assertTrue(fault.seen().contains("replaced by a later one"), fault.toString());
      assertEquals("1.25", store.resource("Observation/2").string("valueString").get());
    }
  }

  @Test
  void writesOverNothingThatSomebodyChanged() throws IOException {
    try (ScriptedServer server = server()) {
      sent(server, EXAM);
      store.change("Observation/2", new Raw.Obj(java.util.Map.of("note", Raw.of("theirs"))));
      Result<Sent> result = send(server, EXAM.replace("1.50", "1.25"), SendPlan.USUAL);
      Fault fault = result.faults().get(0);
      assertTrue(fault.seen().contains("changed on the server"), fault.toString());
      assertTrue(fault.advice().contains("nothing was written over"));
      assertEquals("theirs", store.resource("Observation/2").string("note").get());
    }
  }

  @Test
  void knowsItsOwnUpdateWhereTheAnswerToItWasLost() throws IOException {
    try (ScriptedServer server =
        ScriptedServer.of(
            (asked, before) -> {
              Answer answer = store.answer(asked);
              return before == 1 ? Answer.of(200, "") : answer;
            })) {
      sent(server, EXAM);
      assertEquals(new Sent(3, 0, false), sent(server, EXAM.replace("1.50", "1.25")));
      assertEquals(4, store.writes());
      assertEquals("1.25", store.resource("Observation/2").string("valueString").get());
    }
  }

  @Test
  void givesACreationTheConditionThatItLacks() throws IOException {
    String given =
        """
        {"resource":{"resourceType":"Patient","identifier":[{"value":"1"},
        {"system":"http://a|b","value":"x,y 1"}]},"request":{"method":"POST","url":"Patient"}}""";
    try (ScriptedServer server = server()) {
      assertEquals(1, sent(server, bundle(given)).created());
      Raw entry = RawJson.OWN.read(server.asked().get(0).body()).orThrow().objects("entry").get(0);
      assertEquals(
          "identifier=http%3A%2F%2Fa%5C%7Cb%7Cx%5C%2Cy+1",
          entry.object("request").orElseThrow().string("ifNoneExist").get());
    }
  }

  @Test
  void sendsNothingThatWouldBeStoredTwiceOrOverWhatIsOfOthers() throws IOException {
    List<String> refused =
        List.of(
            "{}",
            "[]",
            "nonsense",
            bundle(),
            bundle("1"),
            bundle("{\"resource\":{}}"),
            EXAM.replace("transaction", "collection"),
            EXAM.replace("PUT", "DELETE"),
            EXAM.replace("PUT", "POST"),
            EXAM.replaceAll("Observation\\?identifier=s%7C", "Patient/"));
    try (ScriptedServer server = server()) {
      for (String one : refused) {
        Result<Sent> result = send(server, one, SendPlan.USUAL);
        assertFalse(result.isOk(), one);
      }
      assertEquals(0, server.asked().size());
      assertTrue(send(server, refused.get(9), new SendPlan(9999, true)).isOk());
    }
  }

  @Test
  void goesOnAfterATransactionThatIsRefused() throws IOException {
    try (ScriptedServer server =
        ScriptedServer.of(
            (asked, before) -> before == 0 ? Answer.of(412, "") : store.answer(asked))) {
      Fault fault = send(server, EXAM, SendPlan.USUAL).faults().get(0);
      assertTrue(fault.wanted().contains("at most one"), fault.toString());
      assertEquals(3, sent(server, EXAM).created());
    }
  }

  @Test
  void stopsWhereNobodyIsLetIn() {
    try (ScriptedServer server = ScriptedServer.answering(Answer.of(403, ""))) {
      assertThrows(ServerException.class, () -> sent(server, EXAM));
      assertEquals(1, server.asked().size());
    }
  }

  @Test
  void showsWhatWouldBeSent() throws IOException {
    try (ScriptedServer server = server();
        Journal journal = Journal.none()) {
      Sender sender = new Sender(server.client(), journal, SendPlan.USUAL);
      List<Sender.Part> parts = sender.parts(EXAM.getBytes(UTF_8)).orThrow();
      assertEquals("PUT Observation?identifier=s%7Cpanel", parts.get(0).entries().get(0));
      assertEquals(0, server.asked().size());
      assertFalse(sender.parts("x".getBytes(UTF_8)).isOk());
    }
  }

  @Test
  void keepsAJournalOfOneServerForOneRunAtATime() throws IOException {
    try (ScriptedServer server = server();
        ScriptedServer other = server()) {
      sent(server, EXAM);
      FaultException wrong = assertThrows(FaultException.class, () -> journal(other));
      assertTrue(wrong.getMessage().contains("another server"), wrong.getMessage());
      try (Journal open = journal(server)) {
        FaultException busy = assertThrows(FaultException.class, () -> journal(server));
        assertTrue(busy.getMessage().contains("another run"), busy.getMessage());
        assertFalse(open.isSent("none"));
      }
      String kept = Files.readString(folder.resolve("sent"));
      assertFalse(kept.contains("identifier"), "it names nobody");
      Files.writeString(folder.resolve("sent"), "a letter\n");
      assertThrows(FaultException.class, () -> journal(server));
      assertEquals("a letter\n", Files.readString(folder.resolve("sent")));
    }
  }
}
