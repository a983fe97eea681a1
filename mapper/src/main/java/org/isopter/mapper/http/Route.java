package org.isopter.mapper.http;

import java.io.IOException;
import java.io.InputStream;
import java.net.URI;
import java.net.http.HttpClient;
import java.net.http.HttpRequest;
import java.net.http.HttpRequest.BodyPublishers;
import java.net.http.HttpResponse;
import java.net.http.HttpResponse.BodyHandlers;
import java.time.Duration;
import java.util.Optional;
import java.util.Set;
import org.isopter.mapper.io.Inflated;
import org.isopter.model.value.Fault;

/** Sends one request one time and goes where the server passes it on to, within what is allowed. */
final class Route {

  private static final Set<Integer> PASSED_ON = Set.of(301, 302, 303, 307, 308);
  private static final int MOST_HOPS = 5;

  private final HttpClient http;
  private final ServerAddress address;
  private final RetryRule rule;

  Route(HttpClient http, ServerAddress address, RetryRule rule) {
    this.http = http;
    this.address = address;
    this.rule = rule;
  }

  /**
   * Sends a request.
   *
   * @param token what only the server itself is given
   * @param left how long it may take
   * @throws ServerException when it is passed on to where it may not go
   */
  ServerReply send(ServerRequest request, Optional<String> token, Duration left)
      throws IOException {
    ServerRequest at = request;
    for (int hops = 0; hops <= MOST_HOPS; hops++) {
      ServerReply reply = one(at, token, left);
      if (!PASSED_ON.contains(reply.status())) {
        return reply;
      }
      reply.close();
      at = at.to(passedOn(at, reply));
    }
    throw ServerException.ofAll(
        Fault.of(
            ServerException.shown(request.uri()),
            "an answer that passes it on for ever",
            "an answer after at most " + MOST_HOPS + " times"));
  }

  /** What is sent goes to the address that was named, or nowhere. */
  private URI passedOn(ServerRequest request, ServerReply reply) {
    String to = reply.headers().firstValue("Location").orElse("");
    if (!request.method().equals("GET")) {
      throw ServerException.ofAll(
          new Fault(
              ServerException.shown(request.uri()),
              "status " + reply.status() + ", which passes on what is sent",
              "an answer from the server itself",
              "give --server the address to which it is passed on, if you know it"));
    }
    return address.link(to, request.uri());
  }

  private ServerReply one(ServerRequest request, Optional<String> token, Duration left)
      throws IOException {
    HttpRequest.Builder builder =
        HttpRequest.newBuilder(request.uri())
            .timeout(left.compareTo(rule.silence()) < 0 ? left : rule.silence())
            .method(
                request.method(),
                request.body().map(BodyPublishers::ofString).orElseGet(BodyPublishers::noBody));
    request.headers().forEach(builder::setHeader);
    token
        .filter(any -> address.isOwn(request.uri()))
        .ifPresent(text -> builder.setHeader("Authorization", "Bearer " + text));
    return reply(builder.build(), left);
  }

  private ServerReply reply(HttpRequest request, Duration left) throws IOException {
    try {
      HttpResponse<InputStream> response = http.send(request, BodyHandlers.ofInputStream());
      InputStream body = new WatchedBody(response.body(), rule.silence(), left);
      return new ServerReply(
          request.uri(), response.statusCode(), response.headers(), inflated(response, body));
    } catch (IllegalArgumentException unreadable) {
      // What the client of the platform makes of a length that is no number.
      throw new IOException("an answer that is no HTTP", unreadable);
    } catch (InterruptedException interrupted) {
      Thread.currentThread().interrupt();
      throw ServerException.ofAll(
          Fault.of(ServerException.shown(request.uri()), "an interruption", "time to finish"));
    }
  }

  private static InputStream inflated(HttpResponse<InputStream> response, InputStream body)
      throws IOException {
    boolean gzip =
        response.headers().firstValue("Content-Encoding").filter("gzip"::equals).isPresent();
    return gzip ? Inflated.of(body) : body;
  }
}
