package org.isopter.mapper.http;

import static java.nio.charset.StandardCharsets.UTF_8;

import java.net.URI;
import java.net.URLEncoder;
import java.net.http.HttpClient;
import java.nio.file.Path;
import java.time.Duration;
import java.time.Instant;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Collectors;
import org.isopter.mapper.json.Raw;
import org.isopter.mapper.json.RawJson;
import org.isopter.model.value.Fault;
import org.isopter.model.value.Result;

/**
 * Tokens that a program asks for by itself, with a key (SMART Backend Services); asked for again
 * before one runs out.
 */
public final class BackendTokens implements TokenSource {

  private static final String FOR_CLIENT = "urn:ietf:params:oauth:client-assertion-type:jwt-bearer";

  /** Taken where the server does not say how long a token holds; the standard advises as much. */
  private static final long USUAL_SECONDS = 300;

  private static final Duration BEFORE_THE_END = Duration.ofSeconds(20);

  private final ServerClient client;
  private final ClientAssertion assertion;
  private final Optional<URI> known;
  private final String scope;
  private final Pause pause;
  private Optional<String> token = Optional.empty();
  private Instant until = Instant.EPOCH;

  /**
   * Makes a source of tokens.
   *
   * @param access what is asked, and by whom
   * @throws ServerException when the file holds no key that can sign
   */
  public BackendTokens(
      ServerAddress address, HttpClient http, Access access, RetryRule rule, Pause pause) {
    this.client = new ServerClient(address, http, TokenSource.NONE, rule, pause);
    this.assertion = ClientAssertion.of(access.client(), access.key());
    this.known = access.tokenAddress();
    this.scope = access.scope();
    this.pause = pause;
  }

  /**
   * Who asks for a token, and for what.
   *
   * @param client the id under which the program is registered with the server
   * @param key a file with the private key, as JWK
   * @param scope what the token is to allow, such as {@code system/*.rs}
   * @param tokenAddress where tokens are given out; empty to ask the server for it
   */
  public record Access(String client, Path key, String scope, Optional<URI> tokenAddress) {}

  @Override
  public Optional<String> token() {
    if (token.isEmpty() || !pause.now().isBefore(until)) {
      ask();
    }
    return token;
  }

  @Override
  public boolean renew() {
    token = Optional.empty();
    return true;
  }

  private void ask() {
    URI where = known.orElseGet(this::discovered);
    if (!ServerAddress.isPrivate(where)) {
      throw refused(where, "a token given out where others can read it", "https");
    }
    Map<String, String> form = new LinkedHashMap<>();
    form.put("grant_type", "client_credentials");
    form.put("scope", scope);
    form.put("client_assertion_type", FOR_CLIENT);
    form.put("client_assertion", assertion.signed(where, pause.now()));
    ServerRequest request =
        new ServerRequest(
            "POST",
            where,
            Map.of(
                "Content-Type", "application/x-www-form-urlencoded", "Accept", "application/json"),
            Optional.of(encoded(form)));
    client.send(request, reply -> take(where, reply));
  }

  private boolean take(URI where, ServerReply reply) throws java.io.IOException {
    String body = reply.text();
    Optional<Raw> answer = json(body);
    if (!reply.isGood()) {
      String error =
          answer.flatMap(raw -> raw.string("error")).filter(TokenSource::isToken).orElse("");
      String seen = "status " + reply.status() + (error.isEmpty() ? "" : " " + error);
      throw refused(where, seen, "a token");
    }
    token = answer.flatMap(raw -> raw.string("access_token")).filter(TokenSource::isToken);
    if (token.isEmpty()) {
      throw refused(where, "an answer without a token", "a token");
    }
    Duration valid =
        Duration.ofSeconds(answer.flatMap(BackendTokens::seconds).orElse(USUAL_SECONDS));
    Duration early = valid.dividedBy(5);
    until = pause.now().plus(valid.minus(min(early, BEFORE_THE_END)));
    return true;
  }

  private static Duration min(Duration one, Duration other) {
    return one.compareTo(other) < 0 ? one : other;
  }

  private static Optional<Long> seconds(Raw answer) {
    return answer
        .get("expires_in")
        .filter(raw -> raw instanceof Raw.Leaf leaf && leaf.text().matches("\\d{1,9}"))
        .map(raw -> Long.valueOf(((Raw.Leaf) raw).text()));
  }

  /** A server that names a host of others for its tokens may do so only where that is allowed. */
  private URI discovered() {
    URI page = client.address().at(".well-known/smart-configuration");
    Optional<String> named =
        client.send(
            ServerRequest.get(page, "application/json"),
            reply ->
                reply.isGood()
                    ? json(reply.text()).flatMap(BackendTokens::named)
                    : Optional.empty());
    if (named.isEmpty()) {
      throw refused(page, "no token_endpoint", "one, or --token-url");
    }
    return client.address().link(named.get(), page);
  }

  private static Optional<String> named(Raw page) {
    return page.string("token_endpoint");
  }

  private static Optional<Raw> json(String body) {
    return RawJson.OWN.read(body) instanceof Result.Ok<Raw> ok
        ? Optional.of(ok.value())
        : Optional.empty();
  }

  private static String encoded(Map<String, String> form) {
    return form.entrySet().stream()
        .map(each -> each.getKey() + "=" + URLEncoder.encode(each.getValue(), UTF_8))
        .collect(Collectors.joining("&"));
  }

  private static ServerException refused(URI where, String seen, String wanted) {
    return ServerException.ofAll(Fault.of(ServerException.shown(where), seen, wanted));
  }
}
