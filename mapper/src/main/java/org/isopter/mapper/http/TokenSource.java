package org.isopter.mapper.http;

import java.util.Optional;

/** Where the bearer token of a server comes from (RFC 6750). It is in no message. */
public interface TokenSource {

  /** No token at all. */
  TokenSource NONE =
      new TokenSource() {
        @Override
        public Optional<String> token() {
          return Optional.empty();
        }

        @Override
        public boolean renew() {
          return false;
        }
      };

  /**
   * Returns the token; empty where none is used.
   *
   * @throws ServerException when there is none to be had
   */
  Optional<String> token();

  /** Lets go of a token that the server does not accept; says whether there may be another. */
  boolean renew();

  /** Says whether a text can be a token, so that it cannot end a header and begin another. */
  static boolean isToken(String text) {
    return text.matches("[A-Za-z0-9._~+/-]{1,16384}=*");
  }
}
