package org.isopter.cli.exchange;

import java.nio.file.Path;
import java.util.Optional;
import org.isopter.task.exchange.SendRequest;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;

/** What is sent where. */
public final class SendOptions {

  @Mixin private final ServerOptions server = new ServerOptions();

  @Option(
      names = "--journal",
      paramLabel = "FILE",
      description = {
        "Keep in FILE what the server has stored; it names no person and no finding.",
        "A run that was stopped is run again with the same FILE: nothing is lost, nothing is sent"
            + " twice."
      })
  private @Nullable Path journal;

  @Option(
      names = "--dry-run",
      description = "Show what would be sent, without any secret, and send nothing.")
  private boolean dry;

  @Option(
      names = "--transaction-size",
      paramLabel = "KB",
      defaultValue = "4096",
      description = "Send what is larger in parts (default: ${DEFAULT-VALUE}).")
  private int size;

  @Option(
      names = "--by-id",
      description = {
        "Send updates of resources by id too. Give it only where they come from this very server:",
        "on another one, the same id is another patient's."
      })
  private boolean byId;

  /** Returns what is asked for. */
  public SendRequest request() {
    return SendRequest.of(server.access(), Optional.ofNullable(journal), size, byId, dry);
  }
}
