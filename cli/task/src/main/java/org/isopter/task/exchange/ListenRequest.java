package org.isopter.task.exchange;

import java.nio.file.Path;
import java.time.Duration;
import java.util.Optional;

/**
 * Where messages are received, and how much at a time.
 *
 * @param folder where they are kept
 * @param address the address to listen at, by name or number
 * @param port the port; 0 for any that is free
 * @param limits how much at a time
 * @param key what encrypts connections; empty for none
 * @param stopAfter how many messages are received; 0 for as many as come
 */
public record ListenRequest(
    Path folder, String address, int port, Limits limits, Optional<Key> key, int stopAfter) {

  /**
   * How much at a time.
   *
   * @param kilobytes the most of a message, in 1024 bytes
   * @param connections the most connections
   * @param idle how long a connection may be silent, and a message on its way
   */
  public record Limits(int kilobytes, int connections, Duration idle) {

    /** The limits unless something else is asked for. */
    public static final Limits USUAL = new Limits(1024, 16, Duration.ofMinutes(5));
  }

  /**
   * What encrypts connections.
   *
   * @param store the key store (PKCS #12 or JKS)
   * @param password the file that holds its password, in UTF-8; empty to take it from the
   *     environment
   * @param senders a PEM file of the certificates of senders; empty where any may send
   */
  public record Key(Path store, Optional<Path> password, Optional<Path> senders) {

    /** The variable of the environment that holds the password of the key store. */
    public static final String VARIABLE = "ISOPTER_KEY_STORE_PASSWORD";
  }

  /** Returns a request to receive into a folder, for this machine alone. */
  public static ListenRequest into(Path folder, int port) {
    return new ListenRequest(folder, "127.0.0.1", port, Limits.USUAL, Optional.empty(), 0);
  }

  /** Returns this request for so many messages. */
  public ListenRequest stoppingAfter(int messages) {
    return new ListenRequest(folder, address, port, limits, key, messages);
  }
}
