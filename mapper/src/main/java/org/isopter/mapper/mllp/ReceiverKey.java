package org.isopter.mapper.mllp;

import java.io.IOException;
import java.io.InputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.security.GeneralSecurityException;
import java.security.KeyStore;
import java.util.Optional;
import javax.net.ssl.KeyManagerFactory;
import javax.net.ssl.SSLContext;
import javax.net.ssl.TrustManager;
import org.isopter.mapper.http.TrustedCa;

/** The key and certificate by which senders know the receiver, and the senders that it knows. */
public final class ReceiverKey {

  private ReceiverKey() {}

  /**
   * Returns what encrypts connections.
   *
   * @param file a key store (PKCS #12 or JKS)
   * @param password its password
   * @param senders a PEM file of the certificates of senders; empty where any may send
   * @throws IOException when a file cannot be read, or the password is another
   * @throws GeneralSecurityException when the store holds no key that can be used
   */
  public static SSLContext of(Path file, char[] password, Optional<Path> senders)
      throws IOException, GeneralSecurityException {
    KeyStore store = KeyStore.getInstance(KeyStore.getDefaultType());
    try (InputStream in = Files.newInputStream(file)) {
      store.load(in, password);
    }
    KeyManagerFactory keys = KeyManagerFactory.getInstance(KeyManagerFactory.getDefaultAlgorithm());
    keys.init(store, password);
    SSLContext context = SSLContext.getInstance("TLS");
    TrustManager[] trusted = senders.map(TrustedCa::managers).orElse(new TrustManager[0]);
    context.init(keys.getKeyManagers(), trusted, null);
    return context;
  }
}
