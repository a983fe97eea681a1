package org.isopter.task.pool;

import java.io.IOException;
import java.nio.charset.CharacterCodingException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Map;
import java.util.Optional;
import org.isopter.mapper.io.FailureText;
import org.isopter.mapper.io.OwnerFile;
import org.isopter.mapper.privacy.SecretKey;
import org.isopter.model.value.Fault;
import org.isopter.model.value.Result;
import org.isopter.task.report.UsageException;

/** Finds the secret of the pseudonyms: in a file, or else in the environment. */
public final class KeySource {

  private KeySource() {}

  /**
   * Returns the key; empty where none is named.
   *
   * @param file the file that holds the secret, in UTF-8
   * @param environment the variables, of which {@link SecretKey#VARIABLE} is asked
   */
  public static Optional<Result<SecretKey>> find(
      Optional<Path> file, Map<String, String> environment) {
    if (file.isPresent()) {
      return file.map(path -> read(path).flatMap(text -> of(text, path.toString())));
    }
    return Optional.ofNullable(environment.get(SecretKey.VARIABLE))
        .map(text -> of(text, SecretKey.VARIABLE));
  }

  /**
   * Returns the key.
   *
   * @throws UsageException when none is named, or it will not do
   */
  public static SecretKey require(Optional<Path> file, Map<String, String> environment) {
    Result<SecretKey> found =
        find(file, environment)
            .orElseThrow(
                () ->
                    new UsageException(
                        "no key: pseudonyms are made from a secret; name a file that holds one with"
                            + " --key-file, set "
                            + SecretKey.VARIABLE
                            + ", or say --identified to keep identities"));
    if (found instanceof Result.Ok<SecretKey> good) {
      return good.value();
    }
    throw new UsageException(found.faults().get(0).toString());
  }

  /**
   * Returns what to say of a file that others than its owner can read: with the key they find the
   * pseudonym of whomever they know. The key of the demo is public.
   */
  public static Optional<String> warning(Path file, SecretKey key) {
    try {
      return key.isOfDemo() || !OwnerFile.isOpen(file)
          ? Optional.empty()
          : Optional.of(
              "the key file " + file + " can be read by others: make it yours alone (chmod 600)");
    } catch (IOException unknown) {
      return Optional.empty();
    }
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
          Fault.of(file.toString(), FailureText.of(failed), "a file with the secret, in UTF-8"));
    }
  }
}
