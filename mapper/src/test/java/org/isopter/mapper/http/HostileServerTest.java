package org.isopter.mapper.http;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.util.concurrent.TimeUnit;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** Answers that are cut off, slow, or say a wrong length (RFC 9112, 6.3 and 8). */
@Timeout(value = 20, unit = TimeUnit.SECONDS)
class HostileServerTest {

  private static final String GOOD = "HTTP/1.1 200 OK\r\nContent-Length: 2\r\n\r\n{}";

  private static String text(ServerClient client) {
    return client.send(
        ServerRequest.get(client.address().at("Patient"), ServerRequest.FHIR), ServerReply::text);
  }

  @ParameterizedTest
  @ValueSource(
      strings = {
        "",
        "HTTP/1.1 200 OK\r\nContent-Le",
        "HTTP/1.1 200 OK\r\nContent-Length: 10\r\n\r\n{}",
        "HTTP/1.1 200 OK\r\nTransfer-Encoding: chunked\r\n\r\n5\r\n{}",
        "HTTP/1.1 200 OK\r\nContent-Length: many\r\n\r\n{}",
        "200 is what I say\r\n\r\n",
        "HTTP/1.1 200 OK\r\nContent-Length: 10\r\n\r\n{" + RawServer.SILENCE,
        "HTTP/1.1 200 OK\r\n" + RawServer.SILENCE,
        "HTTP/1.1 200 OK\r\nContent-Encoding: gzip\r\nContent-Length: 2\r\n\r\n{}"
      })
  void asksAgainWhereAnAnswerIsNoWholeAnswer(String broken) throws IOException {
    try (RawServer server = RawServer.answering(broken, GOOD)) {
      assertEquals("{}", text(server.client()));
      assertEquals(2, server.asked());
    }
  }

  /** The rest of an answer that is longer than it says is not read. */
  @Test
  void readsAsMuchAsAnAnswerSays() throws IOException {
    try (RawServer server = RawServer.answering(GOOD + "{\"more\":1}")) {
      assertEquals("{}", text(server.client()));
    }
  }

  @Test
  void givesUpOnAServerThatIsNeverHeardToTheEnd() throws IOException {
    try (RawServer server =
        RawServer.answering("HTTP/1.1 200 OK\r\nContent-Length: 10\r\n\r\n{}")) {
      ServerClient client = server.client();
      ServerException refused = assertThrows(ServerException.class, () -> text(client));
      assertEquals(8, server.asked());
      assertTrue(refused.isOfAll());
      assertTrue(refused.fault().seen().endsWith("for the 8th time"), refused.toString());
    }
  }
}
