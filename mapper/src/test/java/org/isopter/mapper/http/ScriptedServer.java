package org.isopter.mapper.http;

import static java.nio.charset.StandardCharsets.UTF_8;

import com.sun.net.httpserver.HttpExchange;
import com.sun.net.httpserver.HttpServer;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.net.InetAddress;
import java.net.InetSocketAddress;
import java.net.URI;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.concurrent.CopyOnWriteArrayList;

/** A server on this machine whose answers a test writes. */
public final class ScriptedServer implements AutoCloseable {

  /** What was asked. */
  public record Asked(String method, String uri, Map<String, List<String>> headers, String body) {
    /** Returns a header. */
    public Optional<String> header(String name) {
      return Optional.ofNullable(headers.get(name)).map(all -> all.get(0));
    }
  }

  /** What is answered. */
  public record Answer(int status, Map<String, String> headers, String body) {
    public static Answer of(int status, String body) {
      return new Answer(status, Map.of(), body);
    }

    public static Answer of(int status, String header, String value) {
      return new Answer(status, Map.of(header, value), "");
    }
  }

  /** Answers a request, of which it is told how many came before it. */
  @FunctionalInterface
  public interface Script {
    Answer answer(Asked asked, int before);
  }

  private final HttpServer server;
  private final Script script;
  private final List<Asked> asked = new CopyOnWriteArrayList<>();

  private ScriptedServer(Script script) throws IOException {
    this.script = script;
    server = HttpServer.create(new InetSocketAddress(InetAddress.getLoopbackAddress(), 0), 0);
    server.createContext("/", this::handle);
    server.start();
  }

  public static ScriptedServer of(Script script) {
    try {
      return new ScriptedServer(script);
    } catch (IOException failed) {
      throw new UncheckedIOException(failed);
    }
  }

  /** Answers with these, and with the last of them from then on. */
  public static ScriptedServer answering(Answer... answers) {
    return of((asked, before) -> answers[Math.min(before, answers.length - 1)]);
  }

  private void handle(HttpExchange exchange) throws IOException {
    try (exchange) {
      String body = new String(exchange.getRequestBody().readAllBytes(), UTF_8);
      Asked one =
          new Asked(
              exchange.getRequestMethod(),
              exchange.getRequestURI().toString(),
              Map.copyOf(exchange.getRequestHeaders()),
              body);
      int before = asked.size();
      asked.add(one);
      Answer answer = script.answer(one, before);
      answer.headers().forEach(exchange.getResponseHeaders()::set);
      byte[] bytes = answer.body().getBytes(UTF_8);
      exchange.sendResponseHeaders(answer.status(), bytes.length == 0 ? -1 : bytes.length);
      exchange.getResponseBody().write(bytes);
    }
  }

  /** Returns what was asked so far. */
  public List<Asked> asked() {
    return asked;
  }

  /** Returns host and port. */
  public String host() {
    return "127.0.0.1:" + server.getAddress().getPort();
  }

  public URI base() {
    return URI.create("http://" + host() + "/fhir");
  }

  public ServerAddress address(String... others) {
    return ServerAddress.of(base().toString(), List.of(others)).orThrow();
  }

  /** Returns a client of this server that waits for nothing. */
  public ServerClient client(String... others) {
    return client(TokenSource.NONE, new FakePause(), others);
  }

  public ServerClient client(TokenSource tokens, Pause pause, String... others) {
    return new ServerClient(address(others), FakePause.HTTP, tokens, FakePause.QUICK, pause);
  }

  @Override
  public void close() {
    server.stop(0);
  }
}
