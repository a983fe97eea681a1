package org.isopter.mapper.http;

import static java.nio.charset.StandardCharsets.UTF_8;

import java.io.IOException;
import java.io.InputStream;
import java.net.URI;
import java.net.http.HttpHeaders;
import java.time.DateTimeException;
import java.time.Duration;
import java.time.Instant;
import java.time.ZonedDateTime;
import java.time.format.DateTimeFormatter;
import java.util.Optional;
import org.isopter.model.value.Fault;

/**
 * What a server answers, its body not yet read.
 *
 * @param uri the address that answered, after what it was passed on to
 * @param status the HTTP status
 * @param headers the headers
 * @param body the body; reading it fails where the server goes silent
 */
public record ServerReply(URI uri, int status, HttpHeaders headers, InputStream body)
    implements AutoCloseable {

  /** The most bytes of a body that is held in memory: 64 MB. */
  public static final int MOST = 1 << 26;

  private static final int MOST_DIGITS = 9;

  /** Says whether the server did what was asked for. */
  public boolean isGood() {
    return status >= 200 && status < 300;
  }

  /**
   * Reads the whole body.
   *
   * @throws IOException when it cannot be read to its end
   * @throws ServerException when it is longer than {@link #MOST}
   */
  public byte[] bytes() throws IOException {
    byte[] read = body.readNBytes(MOST + 1);
    if (read.length > MOST) {
      throw ServerException.ofOne(
          Fault.of(
              ServerException.shown(uri),
              "more than " + (MOST >> 20) + " MB in one answer",
              "smaller ones, by _count for instance"),
          status);
    }
    return read;
  }

  /**
   * Reads the whole body as text in UTF-8.
   *
   * @throws IOException when it cannot be read to its end
   */
  public String text() throws IOException {
    return new String(bytes(), UTF_8);
  }

  /** Returns how long the server asks to wait, in seconds or up to a date (RFC 9110, 10.2.3). */
  Optional<Duration> retryAfter(Instant now) {
    return headers.firstValue("Retry-After").map(String::strip).flatMap(text -> wait(text, now));
  }

  /** Returns how long the server asks to wait from now on. */
  public Optional<Duration> retryAfter() {
    return retryAfter(Instant.now());
  }

  private static Optional<Duration> wait(String text, Instant now) {
    if (text.matches("\\d{1," + MOST_DIGITS + "}")) {
      return Optional.of(Duration.ofSeconds(Long.parseLong(text)));
    }
    try {
      Instant then = ZonedDateTime.parse(text, DateTimeFormatter.RFC_1123_DATE_TIME).toInstant();
      Duration wait = Duration.between(now, then);
      return Optional.of(wait.isNegative() ? Duration.ZERO : wait);
    } catch (DateTimeException unreadable) {
      return Optional.empty();
    }
  }

  @Override
  public void close() throws IOException {
    body.close();
  }
}
