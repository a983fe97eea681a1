package org.isopter.mapper.fhir.element;

import static java.nio.charset.StandardCharsets.UTF_8;
import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.UUID;
import org.junit.jupiter.api.Test;

final class NameIdTest {

  @Test
  void isTheDigestOfTheStandard() {
    // RFC 1321, A.5: MD5 ("abc") = 900150983cd24fb0d6963f7d28e17f72; RFC 9562 sets version and
    // kind.
    assertEquals("90015098-3cd2-3fb0-9696-3f7d28e17f72", NameId.of("abc"));
  }

  @Test
  void isWhatThePlatformMakesOfNamesOfEveryLength() {
    StringBuilder name = new StringBuilder();
    for (int i = 0; i < 260; i++) {
      byte[] bytes = name.toString().getBytes(UTF_8);
      assertEquals(UUID.nameUUIDFromBytes(bytes).toString(), NameId.of(name.toString()));
      name.append(i % 7 == 0 ? "é" : "k");
    }
  }
}
