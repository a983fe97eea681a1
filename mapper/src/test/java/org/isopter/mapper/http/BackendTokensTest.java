package org.isopter.mapper.http;

import static java.nio.charset.StandardCharsets.UTF_8;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.nimbusds.jose.jwk.Curve;
import com.nimbusds.jose.jwk.ECKey;
import com.nimbusds.jose.jwk.JWK;
import com.nimbusds.jose.jwk.RSAKey;
import com.nimbusds.jose.jwk.gen.ECKeyGenerator;
import com.nimbusds.jose.jwk.gen.RSAKeyGenerator;
import java.net.URI;
import java.net.URLDecoder;
import java.nio.file.Files;
import java.nio.file.Path;
import java.security.PublicKey;
import java.security.Signature;
import java.time.Duration;
import java.util.Arrays;
import java.util.Base64;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.concurrent.TimeUnit;
import java.util.stream.Collectors;
import org.isopter.mapper.http.ScriptedServer.Answer;
import org.isopter.mapper.http.ScriptedServer.Asked;
import org.isopter.mapper.json.Raw;
import org.isopter.mapper.json.RawJson;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;

/**
 * Tokens by SMART Backend Services: HL7 "SMART App Launch" 2.2.0, "Backend Services" and "Client
 * Authentication: Asymmetric". Signatures are checked by those of the JDK (RFC 7518, 3.3 and 3.4).
 */
@Timeout(value = 20, unit = TimeUnit.SECONDS)
class BackendTokensTest {

  private static final String TOKEN = "{\"access_token\":\"t%d\",\"token_type\":\"bearer\"%s}";

  @TempDir Path folder;
  private final FakePause pause = new FakePause();

  private static ECKey curve() throws Exception {
    return new ECKeyGenerator(Curve.P_384).keyID("k1").generate();
  }

  private Path file(JWK key) throws Exception {
    return Files.writeString(folder.resolve("key.jwk"), key.toJSONString());
  }

  private ServerClient client(ScriptedServer server, JWK key, Optional<URI> address)
      throws Exception {
    BackendTokens.Access access =
        new BackendTokens.Access("clinic", file(key), "system/*.rs", address);
    TokenSource tokens =
        new BackendTokens(server.address(), FakePause.HTTP, access, FakePause.QUICK, pause);
    return server.client(tokens, pause);
  }

  private static String text(ServerClient client) {
    return client.send(
        ServerRequest.get(client.address().at("Patient"), ServerRequest.FHIR), ServerReply::text);
  }

  /** Gives out t1, t2 and so on, and takes the latest alone. */
  private static ScriptedServer server(String validity) {
    int[] given = new int[1];
    return ScriptedServer.of(
        (asked, before) -> {
          if (asked.uri().endsWith("smart-configuration")) {
            return Answer.of(200, "{\"token_endpoint\":\"/token\"}");
          }
          if (asked.uri().equals("/token")) {
            return Answer.of(200, TOKEN.formatted(++given[0], validity));
          }
          boolean good = asked.header("Authorization").equals(Optional.of("Bearer t" + given[0]));
          return Answer.of(good ? 200 : 401, good ? "{}" : "");
        });
  }

  private static Map<String, String> form(Asked asked) {
    return Arrays.stream(asked.body().split("&", -1))
        .map(each -> each.split("=", 2))
        .collect(Collectors.toMap(each -> each[0], each -> URLDecoder.decode(each[1], UTF_8)));
  }

  private static Raw part(String signed, int number) {
    byte[] json = Base64.getUrlDecoder().decode(signed.split("\\.", -1)[number]);
    return RawJson.OWN.read(json).orThrow();
  }

  private static boolean isSigned(String signed, PublicKey key, String algorithm) throws Exception {
    int dot = signed.lastIndexOf('.');
    Signature check = Signature.getInstance(algorithm);
    check.initVerify(key);
    check.update(signed.substring(0, dot).getBytes(UTF_8));
    return check.verify(Base64.getUrlDecoder().decode(signed.substring(dot + 1)));
  }

  private String assertion(JWK key) throws Exception {
    try (ScriptedServer server = server("")) {
      assertEquals("{}", text(client(server, key, Optional.empty())));
      Map<String, String> form = form(server.asked().get(1));
      assertEquals("client_credentials", form.get("grant_type"));
      assertEquals("system/*.rs", form.get("scope"));
      assertEquals(
          "urn:ietf:params:oauth:client-assertion-type:jwt-bearer",
          form.get("client_assertion_type"));
      assertFalse(server.asked().get(1).header("Authorization").isPresent());
      String signed = form.getOrDefault("client_assertion", "");
      Raw claims = part(signed, 1);
      assertEquals(Optional.of("clinic"), claims.string("iss"));
      assertEquals(Optional.of("clinic"), claims.string("sub"));
      assertEquals(Optional.of("http://" + server.host() + "/token"), claims.string("aud"));
      assertTrue(claims.string("jti").isPresent());
      long now = pause.now().getEpochSecond();
      long until = Long.parseLong(((Raw.Leaf) claims.get("exp").orElseThrow()).text());
      assertTrue(until > now && until <= now + 300, "valid for at most five minutes");
      return signed;
    }
  }

  @Test
  void signsByTheCurve() throws Exception {
    ECKey key = curve();
    String signed = assertion(key);
    assertEquals(Optional.of("ES384"), part(signed, 0).string("alg"));
    assertEquals(Optional.of("k1"), part(signed, 0).string("kid"));
    assertTrue(isSigned(signed, key.toECPublicKey(), "SHA384withECDSAinP1363Format"));
    assertFalse(
        isSigned(signed, curve().toECPublicKey(), "SHA384withECDSAinP1363Format"),
        "another key signs otherwise");
  }

  @Test
  void signsByRsa() throws Exception {
    RSAKey key = new RSAKeyGenerator(2048).keyID("k2").generate();
    String signed = assertion(key);
    assertEquals(Optional.of("RS384"), part(signed, 0).string("alg"));
    assertTrue(isSigned(signed, key.toRSAPublicKey(), "SHA384withRSA"));
  }

  @Test
  void asksForAnotherTokenBeforeOneRunsOut() throws Exception {
    try (ScriptedServer server = server(",\"expires_in\":100")) {
      URI address = URI.create("http://" + server.host() + "/token");
      ServerClient client = client(server, curve(), Optional.of(address));
      text(client);
      pause.sleep(Duration.ofSeconds(79));
      text(client);
      assertEquals(3, server.asked().size());
      pause.sleep(Duration.ofSeconds(2));
      text(client);
      assertEquals(5, server.asked().size());
      assertEquals(
          List.of("/token", "/fhir/Patient", "/fhir/Patient", "/token", "/fhir/Patient"),
          server.asked().stream().map(Asked::uri).toList());
    }
  }

  @Test
  void asksForAnotherTokenWhereOneIsNoLongerAccepted() throws Exception {
    int[] asked = new int[1];
    try (ScriptedServer server =
        ScriptedServer.of(
            (one, before) -> {
              if (one.uri().equals("/token")) {
                return Answer.of(200, TOKEN.formatted(++asked[0], ""));
              }
              boolean second = one.header("Authorization").equals(Optional.of("Bearer t2"));
              return Answer.of(second ? 200 : 401, second ? "{}" : "");
            })) {
      URI address = URI.create("http://" + server.host() + "/token");
      assertEquals("{}", text(client(server, curve(), Optional.of(address))));
      assertEquals(2, asked[0]);
    }
  }

  @Test
  void doesNotAskAHostOfOthersThatTheServerNames() throws Exception {
    try (ScriptedServer trap = ScriptedServer.answering(Answer.of(200, TOKEN.formatted(1, "")));
        ScriptedServer server =
            ScriptedServer.answering(
                Answer.of(200, "{\"token_endpoint\":\"" + trap.base() + "\"}"))) {
      ServerClient client = client(server, curve(), Optional.empty());
      ServerException refused = assertThrows(ServerException.class, () -> text(client));
      assertEquals(0, trap.asked().size());
      assertTrue(refused.fault().advice().contains("--allow-host"), refused.toString());
    }
  }

  @Test
  void saysWhyTheServerGivesNoToken() throws Exception {
    try (ScriptedServer server =
        ScriptedServer.answering(Answer.of(400, "{\"error\":\"invalid_scope\"}"))) {
      URI address = URI.create("http://" + server.host() + "/token");
      ServerClient client = client(server, curve(), Optional.of(address));
      ServerException refused = assertThrows(ServerException.class, () -> text(client));
      assertEquals("status 400 invalid_scope", refused.fault().seen());
    }
  }

  @Test
  void takesNoTokenThatWouldBreakAHeader() throws Exception {
    try (ScriptedServer server =
        ScriptedServer.answering(Answer.of(200, "{\"access_token\":\"a\\r\\nX: y\"}"))) {
      URI address = URI.create("http://" + server.host() + "/token");
      ServerClient client = client(server, curve(), Optional.of(address));
      ServerException refused = assertThrows(ServerException.class, () -> text(client));
      assertEquals("an answer without a token", refused.fault().seen());
    }
  }

  @Test
  void saysOfAFileThatItHoldsNoKeyThatCanSignAndNothingOfWhatItHolds() throws Exception {
    for (String text :
        List.of(
            "{\"kty\":\"EC\",\"secret\":\"hidden\"}",
            "hidden",
            curve().toPublicJWK().toJSONString(),
            new ECKeyGenerator(Curve.P_256).generate().toJSONString())) {
      Path file = Files.writeString(folder.resolve("bad"), text);
      ServerException refused =
          assertThrows(ServerException.class, () -> ClientAssertion.of("clinic", file));
      assertFalse(refused.toString().contains("hidden"), refused.toString());
      assertTrue(refused.fault().wanted().contains("ES384"));
    }
    Path none = folder.resolve("none");
    assertThrows(ServerException.class, () -> ClientAssertion.of("clinic", none));
  }
}
