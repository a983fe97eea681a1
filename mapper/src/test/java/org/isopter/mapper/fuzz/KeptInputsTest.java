package org.isopter.mapper.fuzz;

import static org.junit.jupiter.api.Assertions.assertFalse;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import java.util.stream.Stream;
import org.junit.jupiter.api.DynamicTest;
import org.junit.jupiter.api.TestFactory;

/** Every input with which the fuzzer once found a mistake, tried again. */
class KeptInputsTest {

  private static final Path KEPT = Path.of("src", "test", "resources", "fuzz");

  private static final Map<String, Target> TARGETS =
      Map.of(
          "RecordFuzz", RecordFuzz::fuzzerTestOneInput,
          "NoteFuzz", NoteFuzz::fuzzerTestOneInput,
          "FhirFuzz", FhirFuzz::fuzzerTestOneInput,
          "LinesFuzz", LinesFuzz::fuzzerTestOneInput,
          "XmlFuzz", XmlFuzz::fuzzerTestOneInput,
          "ValidatorFuzz", ValidatorFuzz::fuzzerTestOneInput);

  /** What the fuzzer calls. */
  private interface Target {
    void tryOne(byte[] input) throws IOException;
  }

  @TestFactory
  Stream<DynamicTest> holdNow() throws IOException {
    List<Path> inputs = inputs();
    assertFalse(inputs.isEmpty(), "the kept inputs are not where they should be");
    return inputs.stream().map(KeptInputsTest::test);
  }

  private static DynamicTest test(Path input) {
    Path target = input.getName(input.getNameCount() - 2);
    return DynamicTest.dynamicTest(
        target + " " + input.getFileName(),
        () -> TARGETS.get(target.toString()).tryOne(Files.readAllBytes(input)));
  }

  private static List<Path> inputs() throws IOException {
    try (Stream<Path> files = Files.walk(KEPT)) {
      return files.filter(Files::isRegularFile).sorted().toList();
    }
  }
}
