package org.isopter.model.value;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;

import java.time.OffsetDateTime;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** FHIR R4's dateTime goes from the year 1, and from -14:00 to +14:00. */
class TimesTest {

  @ParameterizedTest
  @ValueSource(
      strings = {
        "2026-03-02T09:30:00Z",
        "2026-03-02T09:30:00+14:00",
        "2026-03-02T09:30:00-14:00",
        "0001-01-01T00:00:00Z",
        "9800-12-31T23:59:59Z"
      })
  void takes(String time) {
    OffsetDateTime moment = OffsetDateTime.parse(time);
    assertEquals(moment, Times.require("performed", moment));
  }

  @ParameterizedTest
  @ValueSource(
      strings = {
        "2026-03-02T09:30:00+14:01",
        "2026-03-02T09:30:00-16:00",
        "0000-12-31T23:59:59Z",
        "9801-01-01T00:00:00Z",
        "+10000-01-01T00:00:00Z"
      })
  void refuses(String time) {
    assertFalse(Times.check(OffsetDateTime.parse(time)).isEmpty());
  }

  @Test
  void namesThePlace() {
    OffsetDateTime far = OffsetDateTime.parse("2026-03-02T09:30:00+16:00");
    FaultException refused =
        assertThrows(FaultException.class, () -> Times.require("performed", far));
    assertEquals("performed", refused.faults().get(0).path());
    assertEquals("+16:00", refused.faults().get(0).seen());
  }
}
