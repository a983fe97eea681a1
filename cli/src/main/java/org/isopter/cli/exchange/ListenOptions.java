package org.isopter.cli.exchange;

import java.nio.file.Path;
import java.time.Duration;
import java.util.Optional;
import org.isopter.cli.option.ForeignOptions;
import org.isopter.task.exchange.ListenRequest;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Option;

/** Where messages are received. A secret is read from a file: others see the command line. */
public final class ListenOptions {

  @Option(
      names = {"-o", "--output"},
      required = true,
      paramLabel = "FOLDER",
      description = "Where to keep messages, a file of each that its owner alone can read.")
  private Path folder = Path.of("");

  @Option(
      names = "--address",
      paramLabel = "ADDRESS",
      defaultValue = "127.0.0.1",
      description = {
        "Address to listen at (default: ${DEFAULT-VALUE}, this machine alone).",
        "One that others reach needs --key-store."
      })
  private String address = "";

  @Option(
      names = "--port",
      required = true,
      paramLabel = "PORT",
      description = "Port to listen at; 0 for any that is free.")
  private int port;

  @Option(
      names = "--message-size",
      paramLabel = "KB",
      defaultValue = "1024",
      description = "Refuse what is longer (default: ${DEFAULT-VALUE}).")
  private int kilobytes;

  @Option(
      names = "--connections",
      paramLabel = "N",
      defaultValue = "16",
      description = "Serve so many senders at a time (default: ${DEFAULT-VALUE}).")
  private int connections;

  @Option(
      names = "--idle",
      paramLabel = "TIME",
      converter = ForeignOptions.Window.class,
      description = {
        "How long a sender may be silent, and a message on its way, as 90s or 5m (default: 5m)."
      })
  private @Nullable Duration idle;

  @Option(
      names = "--key-store",
      paramLabel = "FILE",
      description = "Encrypt connections (TLS) with the key in FILE (PKCS #12 or JKS).")
  private @Nullable Path store;

  @Option(
      names = "--key-store-password",
      paramLabel = "FILE",
      description = {
        "File that holds the password of the key store.",
        "Without it, the variable " + ListenRequest.Key.VARIABLE + " of the environment does."
      })
  private @Nullable Path password;

  @Option(
      names = "--senders",
      paramLabel = "FILE",
      description = "Let only those send whom the certificates in FILE (PEM) vouch for.")
  private @Nullable Path senders;

  @Option(
      names = "--stop-after",
      paramLabel = "N",
      defaultValue = "0",
      description = "End when N messages were acknowledged; without it, when asked to.")
  private int stopAfter;

  /** Returns what is asked for. */
  public ListenRequest request() {
    Duration silence = Optional.ofNullable(idle).orElse(ListenRequest.Limits.USUAL.idle());
    return new ListenRequest(
        folder,
        address,
        port,
        new ListenRequest.Limits(kilobytes, connections, silence),
        Optional.ofNullable(store)
            .map(
                file ->
                    new ListenRequest.Key(
                        file, Optional.ofNullable(password), Optional.ofNullable(senders))),
        stopAfter);
  }
}
