package org.isopter.mapper.http;

import static java.nio.charset.StandardCharsets.UTF_8;

import java.net.URI;
import java.net.URISyntaxException;
import java.util.HexFormat;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.Set;
import org.isopter.model.value.Fault;
import org.isopter.model.value.Result;

/**
 * Where a FHIR server is, and which other hosts its links may lead to.
 *
 * @param base its base address, without a slash at the end
 * @param otherHosts hosts, each with a port where it is not the usual one, in lower case
 */
public record ServerAddress(URI base, Set<String> otherHosts) {

  private static final String PLAIN =
      "ABCDEFGHIJKLMNOPQRSTUVWXYZabcdefghijklmnopqrstuvwxyz0123456789-._~:/?@!$&'()*+,;=%";
  private static final Set<String> THIS_MACHINE = Set.of("localhost", "127.0.0.1", "[::1]");

  public ServerAddress {
    otherHosts = Set.copyOf(otherHosts);
  }

  /** Returns an address, or what is wrong with it. */
  public static Result<ServerAddress> of(String base, List<String> otherHosts) {
    String text = base.endsWith("/") ? base.substring(0, base.length() - 1) : base;
    Set<String> hosts =
        otherHosts.stream()
            .map(host -> host.toLowerCase(Locale.ROOT))
            .collect(java.util.stream.Collectors.toSet());
    return uri(text)
        .filter(ServerAddress::isBase)
        .map(uri -> Result.ok(new ServerAddress(uri, hosts)))
        .orElseGet(
            () ->
                Result.refused(
                    Fault.of(
                        "server",
                        "\"" + base + "\"",
                        "the base address of a FHIR server, such as https://host.example/fhir")));
  }

  private static boolean isBase(URI uri) {
    return isHttp(uri)
        && uri.getUserInfo() == null
        && uri.getQuery() == null
        && uri.getFragment() == null;
  }

  private static boolean isHttp(URI uri) {
    return uri.getHost() != null && (isScheme(uri, "https") || isScheme(uri, "http"));
  }

  private static boolean isScheme(URI uri, String scheme) {
    return scheme.equalsIgnoreCase(uri.getScheme());
  }

  private static Optional<URI> uri(String text) {
    try {
      return Optional.of(new URI(text));
    } catch (URISyntaxException none) {
      return Optional.empty();
    }
  }

  /**
   * Returns the address of a request below the base, such as {@code Observation?code=…|…}; what may
   * not stand in an address is escaped.
   *
   * @throws ServerException when it is the address of a host that may not be asked
   */
  public URI at(String request) {
    if (request.startsWith("https://") || request.startsWith("http://")) {
      return link(request, base);
    }
    String below = request.startsWith("/") ? request.substring(1) : request;
    return URI.create(base + "/" + escaped(below));
  }

  /**
   * Returns the address that a link in an answer leads to.
   *
   * @param from the address that was asked, which a link without a host is completed by
   * @throws ServerException when the link leads to a host that may not be asked
   */
  public URI link(String link, URI from) {
    Optional<URI> to = uri(escaped(link)).map(from::resolve).filter(ServerAddress::isHttp);
    if (to.isEmpty()) {
      throw refused(from, "a link that is no web address", "");
    }
    if (isOwn(to.get()) || isAllowed(to.get())) {
      return to.get();
    }
    throw refused(
        from,
        "a link to " + host(to.get()) + " over " + to.get().getScheme(),
        "if it is to be followed, without a token, add --allow-host " + host(to.get()));
  }

  private ServerException refused(URI from, String seen, String advice) {
    String wanted = "one to " + base.getScheme() + "://" + host(base);
    return ServerException.ofAll(new Fault(ServerException.shown(from), seen, wanted, advice));
  }

  /** A host that is allowed is no leave to go from https to what anybody on the way can read. */
  private boolean isAllowed(URI uri) {
    boolean asSafe = isScheme(uri, "https") || isScheme(base, "http");
    return asSafe && otherHosts.contains(host(uri));
  }

  /** Says whether an address is of the same scheme, host and port as the server. */
  public boolean isOwn(URI uri) {
    return isHttp(uri)
        && base.getScheme().equalsIgnoreCase(uri.getScheme())
        && host(base).equals(host(uri))
        && uri.getUserInfo() == null;
  }

  /** Says whether nobody between here and the address can read what is sent. */
  public static boolean isPrivate(URI uri) {
    return isScheme(uri, "https") || THIS_MACHINE.contains(host(uri, false));
  }

  private static String host(URI uri) {
    return host(uri, true);
  }

  private static String host(URI uri, boolean withPort) {
    String host = String.valueOf(uri.getHost()).toLowerCase(Locale.ROOT);
    int usual = isScheme(uri, "https") ? 443 : 80;
    boolean plain = uri.getPort() < 0 || uri.getPort() == usual;
    return plain || !withPort ? host : host + ":" + uri.getPort();
  }

  private static String escaped(String text) {
    StringBuilder escaped = new StringBuilder();
    for (byte one : text.getBytes(UTF_8)) {
      if (one > 0 && PLAIN.indexOf((char) one) >= 0) {
        escaped.append((char) one);
      } else {
        escaped.append('%').append(HexFormat.of().withUpperCase().toHexDigits(one));
      }
    }
    return escaped.toString();
  }
}
