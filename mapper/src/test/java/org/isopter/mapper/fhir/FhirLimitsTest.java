package org.isopter.mapper.fhir;

import static java.nio.charset.StandardCharsets.UTF_8;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNotEquals;
import static org.junit.jupiter.api.Assertions.assertTimeoutPreemptively;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.time.Duration;
import java.util.List;
import org.isopter.model.catalogue.Catalogue;
import org.isopter.model.value.Fault;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** What asks for more memory or stack than a bundle of ours needs is refused, and says so. */
class FhirLimitsTest {

  private static final FhirReader READER = new FhirReader(Catalogue.standard());

  @Test
  void refusesWhatIsTooDeep() {
    Fault fault = only("{\"a\":" + "[".repeat(400_000));
    assertEquals("a document within the limits", fault.wanted());
    assertTrue(fault.seen().contains("depth"), fault.seen());
  }

  @Test
  void refusesAStringThatIsTooLong() {
    Fault fault = only("{\"a\":\"" + "x".repeat(21_000_000) + "\"}");
    assertEquals("a document within the limits", fault.wanted());
    assertTrue(fault.seen().contains("length"), fault.seen());
  }

  @Test
  void refusesABundleThatIsTooLong() {
    Fault fault = only(" ".repeat(FhirReader.LENGTH + 1));
    assertEquals("a bundle of at most " + FhirReader.LENGTH, fault.wanted());
  }

  @ParameterizedTest
  @ValueSource(strings = {"1e100000000", "-1.5E+99999999", "1e-100000000"})
  void refusesANumberThatWouldFillTheMemory(String number) {
    String json =
        FhirWriter.of(BundleKind.COLLECTION).write(DerivedTest.demo("02-net-mender.yaml"));
    String huge = json.replaceFirst("\"value\" ?: ?4.5", "\"value\":" + number);
    assertNotEquals(json, huge);
    List<Fault> faults =
        assertTimeoutPreemptively(Duration.ofSeconds(10), () -> READER.read(huge)).faults();
    assertEquals("a number of few digits", faults.get(0).wanted(), faults.toString());
  }

  @Test
  void namesThePlaceOfBrokenJson() {
    Fault fault = only("{\"resourceType\":\n  oops}");
    assertEquals("well-formed JSON", fault.wanted());
    assertTrue(fault.path().startsWith("line 2, column "), fault.path());
  }

  private static Fault only(String json) {
    List<Fault> faults = READER.read(json.getBytes(UTF_8)).faults();
    assertEquals(faults.get(0).wanted(), READER.read(json).faults().get(0).wanted());
    assertEquals(1, faults.size(), faults.toString());
    return faults.get(0);
  }
}
