package org.isopter.mapper.http;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Optional;
import org.isopter.mapper.io.FailureText;
import org.isopter.model.value.Fault;

/** A token in a file, which something else may renew: it is read again when it is not accepted. */
public final class TokenFile implements TokenSource {

  private final Path file;
  private String token;

  private TokenFile(Path file, String token) {
    this.file = file;
    this.token = token;
  }

  /**
   * Reads a token from a file that holds nothing else.
   *
   * @throws ServerException when it holds none
   */
  public static TokenFile of(Path file) {
    return new TokenFile(file, read(file));
  }

  private static String read(Path file) {
    String wanted = "a file that holds a bearer token and nothing else";
    try {
      String text = Files.readString(file).strip();
      if (TokenSource.isToken(text)) {
        return text;
      }
      throw ServerException.ofAll(
          Fault.of(file.toString(), "something that is no token (not shown)", wanted));
    } catch (IOException failed) {
      throw ServerException.ofAll(Fault.of(file.toString(), FailureText.of(failed), wanted));
    }
  }

  @Override
  public Optional<String> token() {
    return Optional.of(token);
  }

  @Override
  public boolean renew() {
    String before = token;
    token = read(file);
    return !token.equals(before);
  }
}
