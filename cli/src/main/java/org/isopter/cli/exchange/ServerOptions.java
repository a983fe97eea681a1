package org.isopter.cli.exchange;

import java.nio.file.Path;
import java.time.Duration;
import java.util.List;
import java.util.Optional;
import org.isopter.cli.option.ForeignOptions;
import org.isopter.task.exchange.ServerAccess;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Option;

/** How a FHIR server is reached. A secret is read from a file: others see the command line. */
public final class ServerOptions {

  @Option(
      names = "--server",
      required = true,
      paramLabel = "ADDRESS",
      description = "Base address of the FHIR server, as https://host.example/fhir.")
  private String server = "";

  @Option(
      names = "--allow-host",
      paramLabel = "HOST",
      description = {
        "Follow links of the server to HOST (with :PORT if it is not the usual one) too.",
        "No other host is ever asked, and none but the server is given the token."
      })
  private List<String> hosts = List.of();

  @Option(
      names = "--ca",
      paramLabel = "FILE",
      description = "Trust the certificates in FILE (PEM), and no others.")
  private @Nullable Path ca;

  @Option(names = "--proxy", paramLabel = "HOST:PORT", description = "Go by this proxy.")
  private @Nullable String proxy;

  @Option(
      names = "--token-file",
      paramLabel = "FILE",
      description = "Give the server the bearer token in FILE; needs https, or this machine.")
  private @Nullable Path tokenFile;

  @Option(
      names = "--client-id",
      paramLabel = "ID",
      description = "Ask for a token as the client ID (SMART Backend Services).")
  private @Nullable String client;

  @Option(
      names = "--client-key",
      paramLabel = "FILE",
      description = "Private key of the client as JWK, for ES384 or RS384.")
  private @Nullable Path key;

  @Option(
      names = "--scope",
      paramLabel = "SCOPE",
      description = "What the token is to allow, as 'system/*.rs'.")
  private @Nullable String scope;

  @Option(
      names = "--token-url",
      paramLabel = "ADDRESS",
      description = "Where tokens are given out; unless given, the server says it.")
  private @Nullable String tokenAddress;

  @Option(
      names = "--time-limit",
      paramLabel = "TIME",
      converter = ForeignOptions.Window.class,
      description = "How long it may take in all, as 90s, 30m or 2h (default: 1h).")
  private @Nullable Duration limit;

  /** Returns the way to the server. */
  public ServerAccess access() {
    ServerAccess.Token token =
        new ServerAccess.Token(
            Optional.ofNullable(tokenFile),
            Optional.ofNullable(client),
            Optional.ofNullable(key),
            Optional.ofNullable(scope),
            Optional.ofNullable(tokenAddress));
    return new ServerAccess(
        server,
        hosts,
        Optional.ofNullable(ca),
        Optional.ofNullable(proxy),
        token,
        Optional.ofNullable(limit).orElse(ServerAccess.USUAL_LIMIT));
  }
}
