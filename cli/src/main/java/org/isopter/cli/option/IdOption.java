package org.isopter.cli.option;

import java.util.Optional;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Option;

/** The id of a new record. */
public final class IdOption {

  @Option(
      names = "--id",
      paramLabel = "ID",
      description = "The record's own id (default: one that sorts by time is made).")
  private @Nullable String id;

  /** Returns the id; empty where one is to be made. */
  public Optional<String> id() {
    return Optional.ofNullable(id);
  }
}
