package org.isopter.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import org.junit.jupiter.api.Test;

/** Many records in one stream. */
class StreamTest {

  @Test
  void aStreamOfManyRecordsIsHandledOneByOne() {
    String line = Run.of("from-fhir", "-", "--input-format", "ndjson").err();
    assertTrue(line.contains("standard input is empty"), line);
    String record =
        Run.with(
                Run.of("to-fhir", "docs/demo").ok().out(),
                "from-fhir",
                "-",
                "--input-format",
                "ndjson")
            .ok()
            .out();
    int times = 50;
    Run run = Run.with(record.repeat(times), "to-fhir", "-", "--input-format", "ndjson").ok();
    assertEquals((long) times * Run.demo().size(), run.out().lines().count());
  }
}
