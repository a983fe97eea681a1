package org.isopter.mapper.http;

import java.io.IOException;
import java.net.ConnectException;
import java.net.URI;
import java.net.UnknownHostException;
import java.net.http.HttpClient;
import java.time.Duration;
import java.time.Instant;
import java.util.Optional;
import javax.net.ssl.SSLException;
import org.isopter.mapper.io.FailureText;
import org.isopter.model.value.Fault;

/**
 * Sends requests to one FHIR server: again where the server or the way to it failed, within a limit
 * of time for all, and with a token that goes to no other host.
 */
public final class ServerClient {

  private static final int UNAUTHORIZED = 401;
  private static final int FORBIDDEN = 403;

  private final ServerAddress address;
  private final Route route;
  private final TokenSource tokens;
  private final RetryRule rule;
  private final Pause pause;
  private final Instant end;
  private boolean answered;
  private Optional<String> used = Optional.empty();

  /** Reads a reply; called again from the start where that fails. */
  @FunctionalInterface
  public interface ReplyReader<T> {
    T read(ServerReply reply) throws IOException;
  }

  /**
   * Makes a client; the time for all requests begins.
   *
   * @throws ServerException when a token would go where others can read it
   */
  public ServerClient(
      ServerAddress address, HttpClient http, TokenSource tokens, RetryRule rule, Pause pause) {
    this.address = address;
    this.route = new Route(http, address, rule);
    this.tokens = tokens;
    this.rule = rule;
    this.pause = pause;
    this.end = pause.now().plus(rule.total());
    boolean open =
        !ServerAddress.isPrivate(address.base())
            || (http.proxy().isPresent() && !"https".equals(address.base().getScheme()));
    if (tokens != TokenSource.NONE && open) {
      throw ServerException.ofAll(
          Fault.of(
              address.base().toString(),
              "a token for an address that others can read",
              "https, or a server on this machine without a proxy between"));
    }
  }

  /** Returns where the server is. */
  public ServerAddress address() {
    return address;
  }

  /**
   * Sends a request until it is answered with what does not pass by itself, and reads the answer.
   *
   * @throws ServerException when there is no such answer in the time there is, or the server does
   *     not let the request in
   */
  public <T> T send(ServerRequest request, ReplyReader<T> reader) {
    boolean renewed = false;
    for (int tried = 1; ; tried++) {
      Trouble trouble;
      try (ServerReply reply = route.send(request, token(request.uri()), left(request))) {
        answered = true;
        if (reply.status() == UNAUTHORIZED && !renewed && tokens.renew()) {
          renewed = true;
          continue;
        }
        if (!rule.repeats(reply.status(), tried)) {
          return reader.read(heard(reply, request, tried));
        }
        trouble = new Trouble("status " + reply.status(), reply.retryAfter(pause.now()));
      } catch (IOException failed) {
        trouble = new Trouble(words(failed), Optional.empty());
        if (tried >= rule.tries() || isLasting(failed)) {
          throw ServerException.ofAll(trouble.fault(request, tried));
        }
      }
      pause(trouble, request, tried);
    }
  }

  /** Sends a request one time; says whether the server did what it asks for. */
  public boolean sendOnce(ServerRequest request) {
    try (ServerReply reply = route.send(request, token(request.uri()), left(request))) {
      return reply.isGood();
    } catch (IOException | ServerException unheard) {
      return false;
    }
  }

  /** What stood in the way of a request. */
  private record Trouble(String words, Optional<Duration> asked) {
    Fault fault(ServerRequest request, int tried) {
      String times = tried == 1 ? "" : ", for the " + tried + "th time";
      return new Fault(
          ServerException.shown(request.uri()),
          words + times,
          "an answer",
          "run it again when the server can be reached: nothing is lost");
    }
  }

  private Optional<String> token(URI uri) {
    used = address.isOwn(uri) ? tokens.token() : used;
    return address.isOwn(uri) ? used : Optional.empty();
  }

  /** Whoever is not let in, or not heard at all, fares no better with the next request. */
  private ServerReply heard(ServerReply reply, ServerRequest request, int tried)
      throws IOException {
    if (rule.isBusy(reply.status())) {
      throw ServerException.ofAll(
          new Trouble("status " + reply.status(), Optional.empty()).fault(request, tried));
    }
    if (reply.status() == UNAUTHORIZED || reply.status() == FORBIDDEN) {
      throw ServerException.ofAll(
          new Fault(
              ServerException.shown(reply.uri()),
              "status " + reply.status() + said(reply.text()),
              "leave to do this",
              "see --token-file, or --client-id, --client-key and --scope"));
    }
    return reply;
  }

  /** Returns what an answer says of a failure, shortened and without the token. */
  public String said(String body) {
    String words = OutcomeText.of(body);
    String shown = used.map(token -> words.replace(token, "(token)")).orElse(words);
    return shown.isEmpty() ? "" : ": " + shown;
  }

  private void pause(Trouble trouble, ServerRequest request, int tried) {
    Duration own = rule.pauseAfter(tried, pause.chance());
    waitBefore(trouble.asked().filter(asked -> asked.compareTo(own) > 0).orElse(own), request);
  }

  /**
   * Waits before a next request.
   *
   * @throws ServerException when that is longer than there is time
   */
  public void waitBefore(Duration wait, ServerRequest request) {
    if (wait.compareTo(left(request)) >= 0) {
      throw ServerException.ofAll(
          new Fault(
              ServerException.shown(request.uri()),
              "a wait of " + wait.toSeconds() + " s that the server asks for",
              "an answer within " + rule.total().toSeconds() + " s in all",
              "run it again later, or give more time with --time-limit: nothing is lost"));
    }
    try {
      pause.sleep(wait);
    } catch (InterruptedException interrupted) {
      Thread.currentThread().interrupt();
      throw ServerException.ofAll(
          Fault.of(ServerException.shown(request.uri()), "an interruption", "time to finish"));
    }
  }

  private Duration left(ServerRequest request) {
    Duration left = Duration.between(pause.now(), end);
    if (left.isNegative() || left.isZero()) {
      throw ServerException.ofAll(
          new Fault(
              ServerException.shown(request.uri()),
              "no end within " + rule.total().toSeconds() + " s",
              "all of it in that time",
              "give more time with --time-limit"));
    }
    return left;
  }

  /** A server that never answered is more likely misspelled than busy. */
  private boolean isLasting(IOException failed) {
    boolean nobody =
        failed instanceof ConnectException
            || failed instanceof UnknownHostException
            || failed instanceof SSLException;
    return nobody && !answered;
  }

  private static String words(IOException failed) {
    if (failed instanceof ConnectException) {
      return "nobody who listens there";
    }
    return failed instanceof SSLException
        ? "a certificate or cipher that is not trusted"
        : FailureText.of(failed);
  }
}
