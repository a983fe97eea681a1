package org.isopter.server;

import static java.nio.charset.StandardCharsets.UTF_8;
import static org.junit.jupiter.api.Assertions.assertEquals;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Path;
import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.isopter.mapper.exchange.FetchedLines;
import org.isopter.mapper.exchange.Fetcher;
import org.isopter.mapper.exchange.Journal;
import org.isopter.mapper.exchange.SendPlan;
import org.isopter.mapper.exchange.Sender;
import org.isopter.mapper.http.HttpClients;
import org.isopter.mapper.http.Pause;
import org.isopter.mapper.http.RetryRule;
import org.isopter.mapper.http.ServerAddress;
import org.isopter.mapper.http.ServerClient;
import org.isopter.mapper.http.TokenSource;
import org.isopter.model.value.Result;

/** Sends to a server and fetches from it as the commands do. */
final class Exchange {

  private final ServerClient client;

  Exchange(String base) {
    client =
        new ServerClient(
            ServerAddress.of(base, List.of()).orThrow(),
            HttpClients.of(Optional.empty(), Optional.empty()),
            TokenSource.NONE,
            RetryRule.USUAL,
            new Brief());
  }

  /** Waits a moment where the server asks for two minutes, as it does while it exports. */
  private static final class Brief implements Pause {
    private static final Duration LONGEST = Duration.ofMillis(200);

    @Override
    public Instant now() {
      return Pause.REAL.now();
    }

    @Override
    public void sleep(Duration time) throws InterruptedException {
      Pause.REAL.sleep(time.compareTo(LONGEST) < 0 ? time : LONGEST);
    }

    @Override
    public double chance() {
      return Pause.REAL.chance();
    }
  }

  /** Sends a transaction, and keeps what became of it in a journal. */
  Result<Sender.Sent> send(Path journal, String bundle, long largest) {
    try (Journal kept = Journal.open(journal, client.address().base())) {
      return new Sender(client, kept, new SendPlan(largest, false)).send(bundle.getBytes(UTF_8));
    } catch (IOException failed) {
      throw new UncheckedIOException(failed);
    }
  }

  /** Returns the lines that a request gives, each a resource or a page. */
  List<String> fetch(String request) {
    List<String> lines = new ArrayList<>();
    FetchedLines keep =
        new FetchedLines() {
          @Override
          public void line(byte[] json) {
            lines.add(new String(json, UTF_8));
          }

          @Override
          public void deleted(byte[] json) {
            throw new AssertionError("nothing was deleted");
          }

          @Override
          public void trouble(byte[] json) {
            throw new AssertionError(new String(json, UTF_8));
          }
        };
    assertEquals(0, new Fetcher(client, keep).fetch(request).troubles());
    return lines;
  }
}
