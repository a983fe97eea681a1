package org.isopter.cli;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Map;
import java.util.Optional;
import org.isopter.mapper.pool.SecretKey;
import org.isopter.model.value.Fault;
import org.isopter.model.value.Result;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Option;

/** Where the secret of the pseudonyms comes from: never from the command line, which others see. */
final class PoolKey {

  @Option(
      names = "--key-file",
      paramLabel = "FILE",
      description = {
        "File that holds the secret from which pseudonyms are made; at least 16 bytes.",
        "Without it, the environment variable " + SecretKey.VARIABLE + " is taken."
      })
  @Nullable Path keyFile;

  /** Returns the key; empty where none is named. */
  Optional<Result<SecretKey>> find(Map<String, String> environment) {
    if (keyFile != null) {
      return Optional.of(read(keyFile).flatMap(SecretKey::of));
    }
    return Optional.ofNullable(environment.get(SecretKey.VARIABLE)).map(SecretKey::of);
  }

  private static Result<String> read(Path file) {
    try {
      return Result.ok(Files.readString(file));
    } catch (IOException failed) {
      return Result.refused(
          Fault.of(file.toString(), Words.of(failed), "a file with the secret, in UTF-8"));
    }
  }
}
