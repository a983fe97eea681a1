package org.isopter.cli;

import static java.nio.charset.StandardCharsets.UTF_8;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;

/** What a run loads, seen from outside: a JVM of its own tells every class. */
class StartTest {

  private static final String LIBRARY = "ca.uhn.fhir";
  private static final String CORE = "org.hl7.fhir";

  @Test
  void theWayToFhirJsonLoadsNothingOfTheGeneralLibrary() throws Exception {
    String loaded = classes("to-fhir", "docs/demo/01-harbour-pilot.yaml");
    assertTrue(loaded.contains("org.isopter.mapper.fhir.FhirWriter"), "the run did no work");
    assertFalse(loaded.contains(LIBRARY), "HAPI was loaded");
    assertFalse(loaded.contains(CORE), "HAPI's core was loaded");
    assertFalse(loaded.contains("com.networknt"), "the schema library was loaded");
    assertFalse(loaded.contains("org.jline"), "what a terminal needs was loaded");
  }

  @Test
  void theWayFromFhirJsonLoadsNothingOfTheGeneralLibraryEither() throws Exception {
    String loaded = classes("from-fhir", "docs/foreign/clinic.json", "--policy", "extract");
    assertTrue(
        loaded.contains("org.isopter.mapper.foreign.observation.Translator"),
        "the run did no work");
    assertFalse(loaded.contains(LIBRARY), "HAPI was loaded");
    assertFalse(loaded.contains(CORE), "HAPI's core was loaded");
  }

  @Test
  void theWayToXmlDoesLoadIt() throws Exception {
    // So that the test above is known to be able to fail.
    String loaded = classes("to-fhir", "docs/demo/01-harbour-pilot.yaml", "--format", "xml");
    assertTrue(loaded.contains(LIBRARY));
  }

  private static String classes(String... args) throws IOException, InterruptedException {
    List<String> command = new ArrayList<>();
    command.add(Path.of(System.getProperty("java.home"), "bin", "java").toString());
    command.addAll(List.of("-Xshare:off", "-Xlog:class+load:stdout"));
    command.addAll(List.of("-cp", System.getProperty("java.class.path"), Main.class.getName()));
    command.addAll(List.of(args));
    Process process = new ProcessBuilder(command).redirectErrorStream(true).start();
    String output = new String(process.getInputStream().readAllBytes(), UTF_8);
    assertEquals(0, process.waitFor(), output);
    return output
        .lines()
        .filter(line -> line.contains("source: "))
        .collect(java.util.stream.Collectors.joining("\n"));
  }
}
