package org.isopter.cli.option;

import java.nio.file.Path;
import java.util.Map;
import java.util.Optional;
import org.isopter.mapper.privacy.SecretKey;
import org.isopter.task.pool.KeySource;
import org.isopter.task.report.RunLog;
import org.isopter.task.report.UsageException;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Option;

/** Where the secret of the pseudonyms comes from: never from the command line, which others see. */
public final class KeyOptions {

  @Option(
      names = "--key-file",
      paramLabel = "FILE",
      description = {
        "File that holds the secret from which pseudonyms are made; at least 24 bytes, at random.",
        "Without it, the environment variable " + SecretKey.VARIABLE + " is taken."
      })
  @Nullable Path keyFile;

  @Option(
      names = "--project",
      paramLabel = "NAME",
      description = {
        "Make pseudonyms that only pools of the same project share; without it, all pools",
        "with the same key share theirs."
      })
  @Nullable String project;

  @Option(
      names = "--older-key-file",
      paramLabel = "FILE",
      description = {
        "File of the key that is being replaced: --origins then also names persons and",
        "examinations as pools made with it do."
      })
  @Nullable Path olderKeyFile;

  /**
   * Returns the key, of the project where one is named, and says where others can read its file.
   *
   * @throws UsageException when there is none, or it will not do
   */
  SecretKey require(Map<String, String> environment, RunLog log) {
    Optional<Path> file = Optional.ofNullable(keyFile);
    SecretKey key = KeySource.require(file, environment);
    file.flatMap(path -> KeySource.warning(path, key)).ifPresent(log::say);
    return scoped(key);
  }

  /**
   * Returns the key that is being replaced; empty where none is named.
   *
   * @throws UsageException when it will not do
   */
  Optional<SecretKey> older() {
    return Optional.ofNullable(olderKeyFile)
        .map(file -> scoped(KeySource.require(Optional.of(file), Map.of())));
  }

  private SecretKey scoped(SecretKey key) {
    return project == null ? key : key.project(project);
  }
}
