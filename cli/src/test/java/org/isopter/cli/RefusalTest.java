package org.isopter.cli;

import static java.nio.charset.StandardCharsets.UTF_8;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNotEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import org.isopter.task.report.ExitStatus;
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
              "\"code\" : \"(?:mm\\[Hg\\]|mm|deg|\\[diop\\]|%|\\{cycles\\}/deg)\"",
              "\"code\" : \"kPa\"",
              "kPa"),
          // A notation, or an answer where there is none; what a finding is called may bear
          // others' codes beside ours.
          new Change(
              "code",
              "\"code\" : \"(?:snellen-metric|snellen-imperial|logmar|letters|decimal|full)\"",
              "\"code\" : \"no-such-code\"",
              "no-such-code"),
          new Change("side", "\"code\" : \"362502000\"", "\"code\" : \"362503005\"", "362503005"),
          new Change("range", "\"value\" : [0-9.]+", "\"value\" : 5000", "5000"));

  @TempDir static Path folder;

  @TestFactory
  Stream<DynamicTest> aChangedBundleIsRefusedByReaderAndValidator() {
    for (Path file : Run.demo()) {
      String bundle = Run.of("to-fhir", file.toString()).ok().out();
      CHANGES.forEach(change -> write(target(file, change), change(bundle, change)));
    }
    // The validator's definitions take seconds to load: once for all is enough.
    Run reader = Run.of("from-fhir", "--policy", "strict", folder.toString());
    Run validator = Run.of("validate", folder.toString());
    assertEquals(ExitStatus.LEFT_OVER, reader.status());
    assertEquals(ExitStatus.REFUSED, validator.status());
    assertEquals("", reader.out(), "something was read");
    return Run.demo().stream()
        .flatMap(
            file ->
                CHANGES.stream()
                    .flatMap(
                        change ->
                            Stream.of(
                                test("reader", reader.err(), file, change),
                                test("validator", validator.out(), file, change))));
  }

  private static DynamicTest test(String who, String output, Path file, Change change) {
    Path target = target(file, change);
    return DynamicTest.dynamicTest(
        who + ", " + change.name() + ", " + file.getFileName(),
        () -> {
          String own = about(target, output);
          assertTrue(own.contains("  Bundle.entry["), own);
          assertTrue(own.contains("saw "), own);
          assertTrue(own.contains("wanted"), own);
          assertTrue(own.contains(change.seen()), own);
        });
  }

  /** Returns the blocks about one file. */
  private static String about(Path file, String output) {
    StringBuilder own = new StringBuilder();
    boolean about = false;
    for (String line : output.lines().toList()) {
      about = line.startsWith(" ") ? about : line.startsWith(file.toString());
      own.append(about ? line + "\n" : "");
    }
    return own.toString();
  }

  private static String change(String bundle, Change change) {
    Matcher place = change.before().matcher(bundle);
    assertTrue(place.find(), "nothing to change: " + change);
    String changed = place.replaceFirst(change.after());
    assertNotEquals(bundle, changed);
    return changed;
  }

  private static Path target(Path file, Change change) {
    return folder.resolve(change.name() + "-" + file.getFileName() + ".json");
  }

  private static void write(Path file, String text) {
    try {
      Files.writeString(file, text, UTF_8);
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }
}
