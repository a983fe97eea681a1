package org.isopter.mapper.http;

import java.io.IOException;
import java.io.InputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.security.GeneralSecurityException;
import java.security.KeyStore;
import java.security.cert.Certificate;
import java.security.cert.CertificateFactory;
import java.util.Collection;
import javax.net.ssl.SSLContext;
import javax.net.ssl.TrustManager;
import javax.net.ssl.TrustManagerFactory;
import org.isopter.mapper.io.FailureText;
import org.isopter.model.value.Fault;

/** Trust in the certificates of a file, and in no others. */
public final class TrustedCa {

  private TrustedCa() {}

  /**
   * Returns what checks the server by the certificates of a file.
   *
   * @param pem one or more certificates, each between BEGIN CERTIFICATE and END CERTIFICATE
   * @throws ServerException when it holds none
   * @throws IllegalStateException never: every Java has TLS
   */
  public static SSLContext of(Path pem) {
    try {
      SSLContext context = SSLContext.getInstance("TLS");
      context.init(null, managers(pem), null);
      return context;
    } catch (GeneralSecurityException impossible) {
      throw new IllegalStateException("every Java has TLS", impossible);
    }
  }

  /**
   * Returns what checks the other side by the certificates of a file.
   *
   * @throws ServerException when it holds none
   */
  public static TrustManager[] managers(Path pem) {
    try {
      KeyStore store = KeyStore.getInstance(KeyStore.getDefaultType());
      store.load(null, null);
      int number = 0;
      for (Certificate one : certificates(pem)) {
        store.setCertificateEntry("ca-" + number++, one);
      }
      if (number == 0) {
        throw refused(pem, "no certificate");
      }
      TrustManagerFactory trust =
          TrustManagerFactory.getInstance(TrustManagerFactory.getDefaultAlgorithm());
      trust.init(store);
      return trust.getTrustManagers();
    } catch (GeneralSecurityException unreadable) {
      throw refused(pem, "something that is no certificate");
    } catch (IOException failed) {
      throw refused(pem, FailureText.of(failed));
    }
  }

  private static Collection<? extends Certificate> certificates(Path pem)
      throws IOException, GeneralSecurityException {
    try (InputStream in = Files.newInputStream(pem)) {
      return CertificateFactory.getInstance("X.509").generateCertificates(in);
    }
  }

  private static ServerException refused(Path pem, String seen) {
    return ServerException.ofAll(
        Fault.of(pem.toString(), seen, "a PEM file with the certificates of whom to trust"));
  }
}
