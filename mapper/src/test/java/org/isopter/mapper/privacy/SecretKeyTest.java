package org.isopter.mapper.privacy;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertInstanceOf;
import static org.junit.jupiter.api.Assertions.assertNotEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.security.SecureRandom;
import java.util.Base64;
import java.util.HexFormat;
import org.isopter.model.value.Result;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** What may be guessed is refused; what is random never is. */
class SecretKeyTest {

  @ParameterizedTest
  @ValueSource(
      strings = {
        "aaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaa",
        "abcabcabcabcabcabcabcabcabcabcabcabcabc",
        "the eye clinic in the harbour",
        "Password Password Password Password",
        "111111111111111111111112"
      })
  void whatMightBeGuessedIsRefused(String secret) {
    Result<SecretKey> refused = SecretKey.of(secret);
    assertInstanceOf(Result.Refused.class, refused);
    assertTrue(refused.faults().get(0).toString().contains("might be guessed"));
  }

  @Test
  void whatIsRandomIsTaken() {
    SecureRandom random = new SecureRandom();
    for (int i = 0; i < 2_000; i++) {
      byte[] bytes = new byte[32];
      random.nextBytes(bytes);
      SecretKey.of(HexFormat.of().formatHex(bytes)).orThrow();
      SecretKey.of(Base64.getEncoder().encodeToString(bytes)).orThrow();
    }
  }

  @Test
  void projectsShareNoPseudonyms() {
    SecretKey key = SecretKey.of("0f1e2d3c4b5a69788796a5b4c3d2e1f0").orThrow();
    assertNotEquals(
        key.project("a").pseudonym("person", "1"), key.project("b").pseudonym("person", "1"));
    assertNotEquals(key.pseudonym("person", "1"), key.project("a").pseudonym("person", "1"));
    assertEquals(
        key.project("a").pseudonym("person", "1"), key.project("a").pseudonym("person", "1"));
    assertFalse(key.isOfDemo());
  }
}
