package org.isopter.profiles;

import static java.nio.charset.StandardCharsets.UTF_8;
import static org.junit.jupiter.api.Assertions.assertEquals;

import java.io.IOException;
import java.util.List;
import java.util.stream.Stream;
import org.junit.jupiter.api.DynamicTest;
import org.junit.jupiter.api.TestFactory;

/** What the package shows as an example keeps to its own profiles. */
class ShippedExamplesTest {

  @TestFactory
  Stream<DynamicTest> examplesAreValid() throws IOException {
    return Examples.all().entrySet().stream()
        .map(
            example ->
                DynamicTest.dynamicTest(
                    example.getKey(),
                    () ->
                        assertEquals(
                            List.of(),
                            ProfileValidator.standard()
                                .validate(new String(example.getValue(), UTF_8)))));
  }
}
