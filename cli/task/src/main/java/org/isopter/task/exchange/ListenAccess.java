package org.isopter.task.exchange;

import java.io.IOException;
import java.net.InetAddress;
import java.net.InetSocketAddress;
import java.net.UnknownHostException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.security.GeneralSecurityException;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import javax.net.ssl.SSLContext;
import org.isopter.mapper.http.ServerException;
import org.isopter.mapper.io.FailureText;
import org.isopter.mapper.mllp.ListenerOptions;
import org.isopter.mapper.mllp.ReceiverKey;
import org.isopter.task.report.UsageException;

/** What is asked for, as a listener takes it. */
final class ListenAccess {

  private static final int KB = 1024;
  private static final int LARGEST_KB = 1 << 20;
  private static final int LAST_PORT = 65_535;

  private ListenAccess() {}

  /**
   * Returns the options of a listener.
   *
   * @throws UsageException when they will not do, or others than this machine could send what is
   *     not encrypted
   */
  static ListenerOptions of(ListenRequest request, Map<String, String> environment) {
    ListenRequest.Limits limits = request.limits();
    require(request.port() >= 0 && request.port() <= LAST_PORT, "--port is at most 65535");
    require(
        limits.kilobytes() > 0 && limits.kilobytes() < LARGEST_KB,
        "--message-size is at least 1, and less than a gigabyte");
    require(limits.connections() > 0, "--connections is at least 1");
    require(limits.idle().toMillis() > 0, "--idle is longer than nothing");
    require(request.stopAfter() >= 0, "--stop-after is a number of messages");
    List<InetAddress> addresses = addresses(request.address());
    require(
        addresses.stream().allMatch(InetAddress::isLoopbackAddress) || request.key().isPresent(),
        "others than this machine reach " + request.address() + ": give --key-store");
    return new ListenerOptions(
        new InetSocketAddress(addresses.get(0), request.port()),
        limits.kilobytes() * KB,
        limits.connections(),
        limits.idle(),
        request.key().map(key -> context(key, environment)),
        request.key().flatMap(ListenRequest.Key::senders).isPresent());
  }

  private static void require(boolean good, String otherwise) {
    if (!good) {
      throw new UsageException(otherwise);
    }
  }

  /** Returns the addresses of a name; at least one. */
  private static List<InetAddress> addresses(String name) {
    try {
      return List.of(InetAddress.getAllByName(name));
    } catch (UnknownHostException unknown) {
      throw new UsageException("no such address: " + name);
    }
  }

  private static SSLContext context(ListenRequest.Key key, Map<String, String> environment) {
    try {
      return ReceiverKey.of(key.store(), password(key, environment).toCharArray(), key.senders());
    } catch (ServerException senders) {
      throw new UsageException(senders.fault().toString());
    } catch (GeneralSecurityException unusable) {
      throw new UsageException(key.store() + " holds no key that can be used with this password");
    } catch (IOException unreadable) {
      throw new UsageException("cannot open " + key.store() + " with this password, or at all");
    }
  }

  private static String password(ListenRequest.Key key, Map<String, String> environment) {
    Optional<Path> file = key.password();
    if (file.isEmpty()) {
      return Optional.ofNullable(environment.get(ListenRequest.Key.VARIABLE))
          .orElseThrow(
              () ->
                  new UsageException(
                      "no password of the key store: name a file that holds it with"
                          + " --key-store-password, or set "
                          + ListenRequest.Key.VARIABLE));
    }
    try {
      return Files.readString(file.get()).strip();
    } catch (IOException failed) {
      throw new UsageException(file.get() + ": " + FailureText.of(failed));
    }
  }
}
