package org.isopter.cli;

import static java.nio.charset.StandardCharsets.UTF_8;

import com.sun.net.httpserver.HttpExchange;
import com.sun.net.httpserver.HttpServer;
import java.io.IOException;
import java.net.InetAddress;
import java.net.InetSocketAddress;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.isopter.mapper.json.Raw;
import org.isopter.mapper.json.RawJson;

/**
 * A small FHIR server on this machine: it stores what transactions put, by the search that names
 * it, and gives all of a type in pages.
 */
final class LoopbackServer implements AutoCloseable {

  private static final int PAGE = 150;

  private final HttpServer server;
  private final Map<String, Integer> ids = new LinkedHashMap<>();
  private final Map<String, Raw.Obj> stored = new LinkedHashMap<>();

  LoopbackServer() throws IOException {
    server = HttpServer.create(new InetSocketAddress(InetAddress.getLoopbackAddress(), 0), 0);
    server.createContext("/fhir", this::handle);
    server.start();
  }

  String host() {
    return "127.0.0.1:" + server.getAddress().getPort();
  }

  private void handle(HttpExchange exchange) throws IOException {
    try (exchange) {
      String body = new String(exchange.getRequestBody().readAllBytes(), UTF_8);
      boolean post = exchange.getRequestMethod().equals("POST");
      Raw answer = post ? store(RawJson.OWN.read(body).orThrow()) : page(exchange);
      byte[] bytes = RawJson.write(answer).getBytes(UTF_8);
      exchange.getResponseHeaders().set("Content-Type", "application/fhir+json");
      exchange.sendResponseHeaders(200, bytes.length);
      exchange.getResponseBody().write(bytes);
    }
  }

  /** As FHIR asks of a server, references within a transaction become those to what is stored. */
  private Raw store(Raw transaction) {
    List<Raw> answers = new ArrayList<>();
    String text = RawJson.write(transaction);
    for (Raw.Obj entry : transaction.objects("entry")) {
      String url = url(entry);
      boolean there = ids.containsKey(url);
      String place = type(entry) + "/" + ids.computeIfAbsent(url, any -> ids.size() + 1);
      text = text.replace(quoted(entry.string("fullUrl").orElse("")), quoted(place));
      Raw.Obj response = object("status", Raw.of(there ? "200" : "201"));
      answers.add(object("response", response.with("location", Raw.of(place))));
    }
    for (Raw.Obj entry : RawJson.OWN.read(text).orThrow().objects("entry")) {
      Raw id = Raw.of(String.valueOf(ids.get(url(entry))));
      stored.put(url(entry), entry.object("resource").orElseThrow().with("id", id));
    }
    return object("entry", Raw.of(answers)).with("resourceType", Raw.of("Bundle"));
  }

  private static String quoted(String text) {
    return "\"" + text + "\"";
  }

  private static String url(Raw.Obj entry) {
    return entry.object("request").flatMap(it -> it.string("url")).orElseThrow();
  }

  private static String type(Raw.Obj entry) {
    return entry.object("resource").flatMap(it -> it.string("resourceType")).orElseThrow();
  }

  private Raw page(HttpExchange exchange) {
    String type = exchange.getRequestURI().getPath().substring("/fhir/".length());
    String query = String.valueOf(exchange.getRequestURI().getQuery());
    int from = query.contains("from=") ? Integer.parseInt(query.replaceAll(".*from=", "")) : 0;
    List<Raw.Obj> all =
        stored.values().stream()
            .map(resource -> object("resource", resource))
            .filter(entry -> type(entry).equals(type))
            .toList();
    Raw.Obj page =
        object("resourceType", Raw.of("Bundle"))
            .with("type", Raw.of("searchset"))
            .with("entry", Raw.of(all.subList(from, Math.min(all.size(), from + PAGE))));
    if (from + PAGE >= all.size()) {
      return page;
    }
    Raw next = Raw.of("http://" + host() + "/fhir/" + type + "?from=" + (from + PAGE));
    Raw.Obj link = object("relation", Raw.of("next")).with("url", next);
    return page.with("link", Raw.of(List.of(link)));
  }

  private static Raw.Obj object(String name, Raw value) {
    return new Raw.Obj(Map.of(name, value));
  }

  @Override
  public void close() {
    server.stop(0);
  }
}
