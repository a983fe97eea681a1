package org.isopter.server;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import ca.uhn.fhir.batch2.api.IJobMaintenanceService;
import java.io.IOException;
import java.net.URI;
import java.net.http.HttpClient;
import java.net.http.HttpRequest;
import java.net.http.HttpRequest.BodyPublishers;
import java.net.http.HttpResponse;
import java.net.http.HttpResponse.BodyHandlers;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import java.util.concurrent.ScheduledExecutorService;
import java.util.concurrent.TimeUnit;
import org.springframework.boot.SpringApplication;
import org.springframework.boot.web.servlet.context.ServletWebServerApplicationContext;
import tools.jackson.databind.json.JsonMapper;

/** A server that runs while the test does, and the requests that a client sends to it. */
final class FhirServer implements AutoCloseable {

  private static final JsonMapper MAPPER = JsonMapper.shared();
  private static final String FHIR = "application/fhir+json";

  private final ServletWebServerApplicationContext context;
  private final HttpClient client = HttpClient.newHttpClient();
  private final String base;

  private FhirServer(ServletWebServerApplicationContext context) {
    this.context = context;
    this.base = "http://127.0.0.1:" + context.getWebServer().getPort() + "/fhir";
  }

  static FhirServer start() {
    return new FhirServer(
        (ServletWebServerApplicationContext) SpringApplication.run(PlainServer.class));
  }

  /** Returns what sends to this server and fetches from it. */
  Exchange exchange() {
    return new Exchange(base);
  }

  /** Fetches an export while the server is kept at it, as its own clock does once a minute. */
  List<String> fetchExport(String request) {
    ScheduledExecutorService clock = Executors.newSingleThreadScheduledExecutor();
    try {
      IJobMaintenanceService jobs = context.getBean(IJobMaintenanceService.class);
      Future<?> passes =
          clock.scheduleWithFixedDelay(jobs::runMaintenancePass, 200, 200, TimeUnit.MILLISECONDS);
      List<String> lines = exchange().fetch(request);
      passes.cancel(false);
      return lines;
    } finally {
      clock.shutdownNow();
    }
  }

  /** Returns an answer: its status, and its body as it was sent. */
  HttpResponse<String> send(HttpRequest.Builder request) {
    try {
      return client.send(request.build(), BodyHandlers.ofString());
    } catch (IOException broken) {
      throw new java.io.UncheckedIOException(broken);
    } catch (InterruptedException interrupted) {
      throw new IllegalStateException(interrupted);
    }
  }

  HttpRequest.Builder to(String path) {
    URI uri = URI.create(path.startsWith("http") ? path : base + path);
    return HttpRequest.newBuilder(uri).header("Accept", FHIR);
  }

  /** Sends a transaction and returns the status of each of its entries. */
  List<String> transaction(String bundle) {
    String answer =
        accepted(send(to("").header("Content-Type", FHIR).POST(BodyPublishers.ofString(bundle))));
    return MAPPER
        .readTree(answer)
        .path("entry")
        .valueStream()
        .map(entry -> entry.path("response").path("status").asString())
        .toList();
  }

  /** Creates or replaces a resource under an id. */
  void put(String path, String resource) {
    accepted(send(to(path).header("Content-Type", FHIR).PUT(BodyPublishers.ofString(resource))));
  }

  String get(String path) {
    return accepted(send(to(path).GET()));
  }

  /** Returns a search and all pages after it, each as it was sent. */
  List<String> pages(String path) {
    List<String> pages = new ArrayList<>();
    for (Optional<String> next = Optional.of(path); next.isPresent(); ) {
      String page = get(next.get());
      pages.add(page);
      next =
          MAPPER
              .readTree(page)
              .path("link")
              .valueStream()
              .filter(link -> link.path("relation").asString().equals("next"))
              .map(link -> link.path("url").asString())
              .findFirst();
    }
    return pages;
  }

  /** Returns how many versions of all resources there are. */
  int versions() {
    return MAPPER.readTree(get("/_history?_summary=count")).path("total").asInt();
  }

  /** Returns the files of a bulk export of some types. */
  List<String> export(String types) {
    HttpResponse<String> started =
        send(to("/$export?_type=" + types).header("Prefer", "respond-async").GET());
    assertEquals(202, started.statusCode(), started.body());
    String status = started.headers().firstValue("Content-Location").orElseThrow();
    for (int tries = 0; tries < 300; tries++) {
      HttpResponse<String> answer = send(to(status).GET());
      if (answer.statusCode() == 200) {
        return MAPPER
            .readTree(answer.body())
            .path("output")
            .valueStream()
            .map(file -> exported(file.path("url").asString()))
            .toList();
      }
      context.getBean(IJobMaintenanceService.class).runMaintenancePass();
      pause();
    }
    throw new AssertionError("the export does not end");
  }

  /** The server keeps each file of an export as a binary; its bytes are asked for as they are. */
  private String exported(String url) {
    return accepted(send(to(url).setHeader("Accept", "application/fhir+ndjson").GET()));
  }

  private static void pause() {
    try {
      Thread.sleep(200);
    } catch (InterruptedException interrupted) {
      throw new IllegalStateException(interrupted);
    }
  }

  private static String accepted(HttpResponse<String> answer) {
    assertTrue(answer.statusCode() < 300, () -> answer.statusCode() + ": " + answer.body());
    return answer.body();
  }

  @Override
  public void close() {
    context.close();
  }
}
