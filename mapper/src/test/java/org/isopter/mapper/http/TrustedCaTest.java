package org.isopter.mapper.http;

import static java.nio.charset.StandardCharsets.UTF_8;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.sun.net.httpserver.HttpsConfigurator;
import com.sun.net.httpserver.HttpsServer;
import java.io.InputStream;
import java.net.InetAddress;
import java.net.InetSocketAddress;
import java.net.http.HttpClient;
import java.nio.file.Files;
import java.nio.file.Path;
import java.security.KeyStore;
import java.util.Base64;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.TimeUnit;
import javax.net.ssl.KeyManagerFactory;
import javax.net.ssl.SSLContext;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;

/** A server with a certificate that only a file of ours vouches for. */
@Timeout(value = 30, unit = TimeUnit.SECONDS)
class TrustedCaTest {

  private static final String PASSWORD = "for-this-test-alone";

  @TempDir Path folder;

  private KeyStore store() throws Exception {
    Path file = folder.resolve("server.p12");
    Path keytool = Path.of(System.getProperty("java.home"), "bin", "keytool");
    Process process =
        new ProcessBuilder(
                keytool.toString(),
                "-genkeypair",
                "-alias",
                "server",
                "-keyalg",
                "EC",
                "-dname",
                "CN=127.0.0.1",
                "-ext",
                "san=ip:127.0.0.1",
                "-storetype",
                "PKCS12",
                "-keystore",
                file.toString(),
                "-storepass",
                PASSWORD)
            .redirectErrorStream(true)
            .start();
    String said = new String(process.getInputStream().readAllBytes(), UTF_8);
    assertEquals(0, process.waitFor(), said);
    KeyStore store = KeyStore.getInstance("PKCS12");
    try (InputStream in = Files.newInputStream(file)) {
      store.load(in, PASSWORD.toCharArray());
    }
    return store;
  }

  private static HttpsServer server(KeyStore store) throws Exception {
    KeyManagerFactory keys = KeyManagerFactory.getInstance(KeyManagerFactory.getDefaultAlgorithm());
    keys.init(store, PASSWORD.toCharArray());
    SSLContext context = SSLContext.getInstance("TLS");
    context.init(keys.getKeyManagers(), null, null);
    HttpsServer server =
        HttpsServer.create(new InetSocketAddress(InetAddress.getLoopbackAddress(), 0), 0);
    server.setHttpsConfigurator(new HttpsConfigurator(context));
    server.createContext(
        "/",
        exchange -> {
          exchange.sendResponseHeaders(200, 2);
          exchange.getResponseBody().write("{}".getBytes(UTF_8));
          exchange.close();
        });
    server.start();
    return server;
  }

  private static String text(HttpsServer server, HttpClient http) {
    String base = "https://127.0.0.1:" + server.getAddress().getPort() + "/fhir";
    ServerClient client =
        new ServerClient(
            ServerAddress.of(base, List.of()).orThrow(),
            http,
            TokenSource.NONE,
            FakePause.QUICK,
            new FakePause());
    return client.send(
        ServerRequest.get(client.address().at("metadata"), ServerRequest.FHIR), ServerReply::text);
  }

  @Test
  void isWhomTheFileNamesAndNobodyElse() throws Exception {
    KeyStore store = store();
    byte[] certificate = store.getCertificate("server").getEncoded();
    String pem =
        """
        -----BEGIN CERTIFICATE-----
        %s
        -----END CERTIFICATE-----
        """
            .formatted(Base64.getMimeEncoder().encodeToString(certificate));
    Path ca = Files.writeString(folder.resolve("ca.pem"), pem);
    HttpsServer server = server(store);
    try {
      HttpClient trusting = HttpClients.of(Optional.of(TrustedCa.of(ca)), Optional.empty());
      assertEquals("{}", text(server, trusting));
      ServerException refused =
          assertThrows(ServerException.class, () -> text(server, FakePause.HTTP));
      assertEquals("a certificate or cipher that is not trusted", refused.fault().seen());
    } finally {
      server.stop(0);
    }
  }

  @Test
  void isNobodyWhereTheFileHoldsNoCertificate() throws Exception {
    Path empty = Files.writeString(folder.resolve("empty.pem"), "");
    Path other = Files.writeString(folder.resolve("other.pem"), "-----BEGIN X-----\n");
    for (Path file : List.of(empty, other, folder.resolve("none.pem"))) {
      ServerException refused = assertThrows(ServerException.class, () -> TrustedCa.of(file));
      assertTrue(refused.fault().wanted().startsWith("a PEM file"), refused.toString());
    }
  }
}
