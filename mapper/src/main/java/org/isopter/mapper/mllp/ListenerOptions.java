package org.isopter.mapper.mllp;

import java.net.InetSocketAddress;
import java.time.Duration;
import java.util.Optional;
import javax.net.ssl.SSLContext;

/**
 * Where messages are received, and how much at a time.
 *
 * @param address the address and the port; port 0 for any that is free
 * @param longest the most bytes of a message
 * @param connections the most connections at a time; one more is closed at once
 * @param idle how long a connection may be silent, and how long a message may take that has begun
 * @param tls the key of the receiver; empty for a connection that is not encrypted
 * @param knownSenders whether a sender must show a certificate that is trusted
 */
public record ListenerOptions(
    InetSocketAddress address,
    int longest,
    int connections,
    Duration idle,
    Optional<SSLContext> tls,
    boolean knownSenders) {

  /** Makes options; every limit is at least 1. */
  public ListenerOptions {
    if (longest < 1 || connections < 1 || idle.toMillis() < 1) {
      throw new IllegalArgumentException("a limit below 1");
    }
  }
}
