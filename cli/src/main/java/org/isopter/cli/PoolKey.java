package org.isopter.cli;

import java.io.IOException;
import java.nio.charset.CharacterCodingException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Map;
import java.util.Optional;
import org.isopter.mapper.privacy.SecretKey;
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

  /** Returns the key of the project, where one is named. */
  SecretKey scoped(SecretKey key) {
    return project == null ? key : key.project(project);
  }

  /** Returns the key; empty where none is named. */
  Optional<Result<SecretKey>> find(Map<String, String> environment) {
    if (keyFile != null) {
      return Optional.of(read(keyFile).flatMap(text -> of(text, String.valueOf(keyFile))));
    }
    return Optional.ofNullable(environment.get(SecretKey.VARIABLE))
        .map(text -> of(text, SecretKey.VARIABLE));
  }

  /** Returns the key of a secret; a fault says where the secret came from. */
  private static Result<SecretKey> of(String secret, String from) {
    Result<SecretKey> key = SecretKey.of(secret);
    return key instanceof Result.Ok<SecretKey>
        ? key
        : Result.refused(key.faults().stream().map(fault -> fault.at(from)).toList());
  }

  private static Result<String> read(Path file) {
    try {
      return Result.ok(Files.readString(file));
    } catch (CharacterCodingException binary) {
      return Result.refused(
          Fault.of(
              file.toString(),
              "bytes that are no UTF-8",
              "a secret in UTF-8, such as random bytes in hexadecimal"));
    } catch (IOException failed) {
      return Result.refused(
          Fault.of(file.toString(), Words.of(failed), "a file with the secret, in UTF-8"));
    }
  }
}
