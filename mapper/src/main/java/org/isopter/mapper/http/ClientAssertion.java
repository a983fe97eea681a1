package org.isopter.mapper.http;

import com.nimbusds.jose.JOSEException;
import com.nimbusds.jose.JWSAlgorithm;
import com.nimbusds.jose.JWSHeader;
import com.nimbusds.jose.JWSSigner;
import com.nimbusds.jose.crypto.ECDSASigner;
import com.nimbusds.jose.crypto.RSASSASigner;
import com.nimbusds.jose.jwk.Curve;
import com.nimbusds.jose.jwk.ECKey;
import com.nimbusds.jose.jwk.JWK;
import com.nimbusds.jose.jwk.RSAKey;
import com.nimbusds.jwt.JWTClaimsSet;
import com.nimbusds.jwt.SignedJWT;
import java.io.IOException;
import java.net.URI;
import java.nio.file.Files;
import java.nio.file.Path;
import java.text.ParseException;
import java.time.Duration;
import java.time.Instant;
import java.util.UUID;
import org.isopter.mapper.io.FailureText;
import org.isopter.model.value.Fault;

/**
 * The signed statement by which a program shows who it is (SMART App Launch 2.2, "Client
 * Authentication: Asymmetric"), by ES384 or RS384. Nothing else needs the library that signs.
 */
final class ClientAssertion {

  /** The standard allows up to five minutes. */
  private static final Duration VALID = Duration.ofMinutes(4);

  private final String client;
  private final JWK key;
  private final JWSAlgorithm algorithm;
  private final JWSSigner signer;

  private ClientAssertion(String client, JWK key, JWSAlgorithm algorithm, JWSSigner signer) {
    this.client = client;
    this.key = key;
    this.algorithm = algorithm;
    this.signer = signer;
  }

  /**
   * Reads a private key from a file that holds one JWK (RFC 7517).
   *
   * @throws ServerException when it holds none that can sign
   */
  static ClientAssertion of(String client, Path file) {
    try {
      return of(client, JWK.parse(Files.readString(file)), file);
    } catch (ParseException | JOSEException unreadable) {
      // The message of the library may quote the file.
      throw refused(file, "something that is no key that can sign (not shown)");
    } catch (IOException failed) {
      throw refused(file, FailureText.of(failed));
    }
  }

  private static ClientAssertion of(String client, JWK key, Path file) throws JOSEException {
    if (!key.isPrivate()) {
      throw refused(file, "a public key");
    }
    if (key instanceof ECKey curve && Curve.P_384.equals(curve.getCurve())) {
      return new ClientAssertion(client, key, JWSAlgorithm.ES384, new ECDSASigner(curve));
    }
    if (key instanceof RSAKey rsa) {
      return new ClientAssertion(client, key, JWSAlgorithm.RS384, new RSASSASigner(rsa));
    }
    throw refused(file, "a key of another kind");
  }

  private static ServerException refused(Path file, String seen) {
    return ServerException.ofAll(
        Fault.of(file.toString(), seen, "a private JWK, for ES384 (P-384) or RS384 (RSA)"));
  }

  /** Returns a statement for the address that gives out tokens. */
  String signed(URI tokenAddress, Instant now) {
    JWSHeader header = new JWSHeader.Builder(algorithm).keyID(key.getKeyID()).build();
    JWTClaimsSet claims =
        new JWTClaimsSet.Builder()
            .issuer(client)
            .subject(client)
            .audience(tokenAddress.toString())
            .jwtID(UUID.randomUUID().toString())
            .claim("iat", now.getEpochSecond())
            .claim("exp", now.plus(VALID).getEpochSecond())
            .build();
    SignedJWT signed = new SignedJWT(header, claims);
    try {
      signed.sign(signer);
    } catch (JOSEException impossible) {
      throw new IllegalStateException("the key signed nothing", impossible);
    }
    return signed.serialize();
  }
}
