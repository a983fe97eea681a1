package org.isopter.mapper.http;

import java.net.InetSocketAddress;
import java.net.ProxySelector;
import java.net.http.HttpClient;
import java.time.Duration;
import java.util.Optional;
import javax.net.ssl.SSLContext;

/** Makes HTTP clients that follow nothing by themselves. */
public final class HttpClients {

  private static final Duration LONGEST_CONNECT = Duration.ofSeconds(20);

  private HttpClients() {}

  /**
   * Returns a client.
   *
   * @param trust whom to trust; empty for those that Java trusts
   * @param proxy a proxy for every request; empty for the one that Java is set to, if any
   */
  public static HttpClient of(Optional<SSLContext> trust, Optional<InetSocketAddress> proxy) {
    HttpClient.Builder builder =
        HttpClient.newBuilder()
            .version(HttpClient.Version.HTTP_1_1)
            .followRedirects(HttpClient.Redirect.NEVER)
            .connectTimeout(LONGEST_CONNECT);
    trust.ifPresent(builder::sslContext);
    proxy.map(ProxySelector::of).ifPresent(builder::proxy);
    return builder.build();
  }
}
