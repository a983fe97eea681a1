package org.isopter.mapper.check;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.nio.file.Path;
import java.util.List;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.isopter.mapper.Goldens;
import org.isopter.model.check.Consistency;
import org.isopter.model.check.Severity;
import org.isopter.model.check.Violation;
import org.junit.jupiter.api.Test;

/** What the rules say of the records that the documentation shows; every line was reviewed. */
class DemoRecordsTest {

  @Test
  void noneOfThemIsWrong() {
    List<Violation> errors =
        RecordFiles.in(RecordFiles.DEMO).stream()
            .flatMap(file -> Consistency.check(RecordFiles.exam(file)).stream())
            .filter(violation -> violation.rule().severity() == Severity.ERROR)
            .toList();
    assertEquals(List.of(), errors);
  }

  @Test
  void whatIsToldOfThemWasReviewed() {
    Goldens.check(
        Path.of("src/test/resources/golden/demo-rules.txt"),
        RecordFiles.in(RecordFiles.DEMO).stream()
            .flatMap(DemoRecordsTest::lines)
            .collect(Collectors.joining("\n", "", "\n")));
  }

  private static Stream<String> lines(Path file) {
    List<Violation> reported = Consistency.check(RecordFiles.exam(file));
    Stream<String> lines =
        reported.isEmpty()
            ? Stream.of("nothing to tell")
            : reported.stream().map(Violation::toString);
    return lines.map(line -> file.getFileName() + ": " + line);
  }
}
