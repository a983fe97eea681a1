package org.isopter.task.exchange;

import java.net.InetSocketAddress;
import java.net.URI;
import java.net.http.HttpClient;
import java.nio.file.Path;
import java.time.Duration;
import java.util.List;
import java.util.Optional;
import org.isopter.mapper.http.BackendTokens;
import org.isopter.mapper.http.HttpClients;
import org.isopter.mapper.http.Pause;
import org.isopter.mapper.http.RetryRule;
import org.isopter.mapper.http.ServerAddress;
import org.isopter.mapper.http.ServerClient;
import org.isopter.mapper.http.ServerException;
import org.isopter.mapper.http.TokenFile;
import org.isopter.mapper.http.TokenSource;
import org.isopter.mapper.http.TrustedCa;
import org.isopter.model.value.Result;
import org.isopter.task.report.UsageException;

/**
 * How a server is reached.
 *
 * @param server its base address
 * @param hosts other hosts that its links may lead to
 * @param ca a PEM file of the certificates to trust; empty for those that Java trusts
 * @param proxy host and port of a proxy; empty for none of our own
 * @param token where a token comes from
 * @param limit how long all requests together may take
 */
public record ServerAccess(
    String server,
    List<String> hosts,
    Optional<Path> ca,
    Optional<String> proxy,
    Token token,
    Duration limit) {

  /** How long all requests together may take unless something else is asked for. */
  public static final Duration USUAL_LIMIT = RetryRule.USUAL.total();

  public ServerAccess {
    hosts = List.copyOf(hosts);
  }

  /** Returns the usual way to a server that asks for no token. */
  public static ServerAccess to(String server) {
    return new ServerAccess(
        server, List.of(), Optional.empty(), Optional.empty(), Token.NONE, USUAL_LIMIT);
  }

  /**
   * Where a token comes from; from nowhere where there is neither a file nor a client.
   *
   * @param file a file that holds it
   * @param client the id of a program that asks for it by itself
   * @param key the file of its private key, as JWK
   * @param scope what the token is to allow
   * @param address where tokens are given out; empty to ask the server
   */
  public record Token(
      Optional<Path> file,
      Optional<String> client,
      Optional<Path> key,
      Optional<String> scope,
      Optional<String> address) {

    /** No token. */
    public static final Token NONE =
        new Token(
            Optional.empty(),
            Optional.empty(),
            Optional.empty(),
            Optional.empty(),
            Optional.empty());

    boolean isNone() {
      return file.isEmpty() && client.isEmpty() && key.isEmpty();
    }
  }

  /**
   * Returns the address.
   *
   * @throws UsageException when it is none
   */
  ServerAddress address() {
    Result<ServerAddress> address = ServerAddress.of(server, hosts);
    if (!address.isOk()) {
      throw new UsageException("--" + address.faults().get(0));
    }
    return address.orThrow();
  }

  /**
   * Returns a client; its time begins. Nothing is asked yet.
   *
   * @throws UsageException when the options do not fit each other
   * @throws ServerException when a file does not hold what it should
   */
  ServerClient client() {
    ServerAddress address = address();
    if (proxy.isPresent() && !token.isNone() && !"https".equals(address.base().getScheme())) {
      throw new UsageException("--proxy would see the token: it needs a server with https");
    }
    RetryRule rule = RetryRule.USUAL.within(limit);
    HttpClient http = HttpClients.of(ca.map(TrustedCa::of), proxy.map(ServerAccess::hostAndPort));
    return new ServerClient(address, http, tokens(address, http, rule), rule, Pause.REAL);
  }

  private TokenSource tokens(ServerAddress address, HttpClient http, RetryRule rule) {
    if (token.file().isPresent() && (token.client().isPresent() || token.key().isPresent())) {
      throw new UsageException(
          "--token-file holds a token, and --client-id asks for one: give one");
    }
    if (token.client().isPresent() != token.key().isPresent()) {
      throw new UsageException("--client-id and --client-key need each other");
    }
    if (token.file().isPresent()) {
      return TokenFile.of(token.file().get());
    }
    return token.isNone()
        ? TokenSource.NONE
        : new BackendTokens(address, http, backend(), rule, Pause.REAL);
  }

  private BackendTokens.Access backend() {
    return new BackendTokens.Access(
        token.client().orElseThrow(),
        token.key().orElseThrow(),
        token
            .scope()
            .orElseThrow(() -> new UsageException("--client-id needs --scope: what is asked for")),
        token.address().map(ServerAccess::address));
  }

  private static URI address(String text) {
    Result<ServerAddress> address = ServerAddress.of(text, List.of());
    if (!address.isOk()) {
      throw new UsageException("--token-url " + text + " is no web address");
    }
    return address.orThrow().base();
  }

  private static InetSocketAddress hostAndPort(String text) {
    int colon = text.lastIndexOf(':');
    if (colon < 1 || !text.substring(colon + 1).matches("\\d{1,5}")) {
      throw new UsageException(
          "--proxy " + text + " is no host with a port, as proxy.example:3128");
    }
    int port = Integer.parseInt(text.substring(colon + 1));
    if (port > 0xffff) {
      throw new UsageException("--proxy " + text + " names a port that there is not");
    }
    return new InetSocketAddress(text.substring(0, colon), port);
  }
}
