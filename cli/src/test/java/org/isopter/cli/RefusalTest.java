package org.isopter.cli;

import static java.nio.charset.StandardCharsets.UTF_8;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNotEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import org.junit.jupiter.api.DynamicTest;
import org.junit.jupiter.api.TestFactory;
import org.junit.jupiter.api.io.TempDir;

/**
 * One thing in the FHIR of each demo examination is changed: a unit, a code, a side or a number out
 * of its range. The reader and the reference validator must both refuse it and say where.
 */
class RefusalTest {

  /**
   * A change.
   *
   * @param name what is changed
   * @param before what stands there
   * @param after what it becomes
   * @param seen what the messages must name
   */
  private record Change(String name, Pattern before, String after, String seen) {
    Change(String name, String before, String after, String seen) {
      this(name, Pattern.compile(before), after, seen);
    }
  }

  private static final List<Change> CHANGES =
      List.of(
          new Change(
              "unit",
              "\"code\" : \"(?:mm\\[Hg\\]|mm|deg|\\[diop\\])\"",
              "\"code\" : \"kPa\"",
              "kPa"),
          new Change(
              "code",
              "\"code\" : \"(?:363953003|251739003|386714003|98499-7)\"",
              "\"code\" : \"1\"",
              "1"),
          new Change("side", "\"code\" : \"362502000\"", "\"code\" : \"362503005\"", "362503005"),
          new Change("range", "\"value\" : [0-9.]+", "\"value\" : 5000", "5000"));

  @TempDir static Path folder;

  @TestFactory
  Stream<DynamicTest> aChangedBundleIsRefusedByReaderAndValidator() {
    return Run.demo().stream()
        .flatMap(
            file ->
                CHANGES.stream()
                    .map(
                        change ->
                            DynamicTest.dynamicTest(
                                file.getFileName() + ": " + change.name(),
                                () -> refused(file, change))));
  }

  private static void refused(Path file, Change change) throws IOException {
    String bundle = Run.of("to-fhir", file.toString()).ok().out();
    Matcher place = change.before().matcher(bundle);
    assertTrue(place.find(), "nothing to change");
    String changed = place.replaceFirst(change.after());
    assertNotEquals(bundle, changed);
    Path target = folder.resolve(change.name() + "-" + file.getFileName() + ".json");
    Files.writeString(target, changed, UTF_8);
    List<Run> runs = new ArrayList<>();
    runs.add(Run.of("from-fhir", target.toString()));
    runs.add(Run.of("validate", target.toString()));
    for (Run run : runs) {
      String told = run.out() + run.err();
      assertEquals(ExitStatus.REFUSED, run.status(), told);
      assertTrue(told.contains("Bundle.entry["), told);
      assertTrue(told.contains("saw "), told);
      assertTrue(told.contains("wanted "), told);
      assertTrue(told.contains(change.seen()), told);
    }
  }
}
