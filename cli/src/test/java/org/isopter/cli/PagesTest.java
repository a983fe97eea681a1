package org.isopter.cli;

import static java.nio.charset.StandardCharsets.UTF_8;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.Stream;
import org.junit.jupiter.api.DynamicTest;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.TestFactory;

/** Every command that a page or a help text shows is run, and its output is the one shown. */
class PagesTest {

  private static final String PROGRAM = "./isopter ";

  @TestFactory
  Stream<DynamicTest> aPageShowsWhatItsCommandsPrint() throws IOException {
    return pages().stream()
        .flatMap(page -> Console.of(page).stream())
        .filter(shown -> !shown.command().startsWith("mvn "))
        .map(shown -> DynamicTest.dynamicTest(shown.toString(), () -> check(shown)));
  }

  @Test
  void theFrontPageShowsCommands() {
    assertFalse(Console.of(Path.of("README.md")).isEmpty());
    assertFalse(Console.of(Path.of("docs", "command-line.md")).isEmpty());
  }

  @TestFactory
  Stream<DynamicTest> theExamplesOfAHelpTextRun() {
    return MainTest.commands().stream()
        .flatMap(command -> Run.of(command, "--help").out().lines())
        .filter(line -> line.startsWith("  isopter "))
        .map(String::strip)
        .map(line -> DynamicTest.dynamicTest(line, () -> example(line)));
  }

  @Test
  void anEllipsisStandsForAnyLines() {
    assertTrue(Console.fits(List.of("a", "…", "d"), List.of("a", "b", "c", "d")));
    assertTrue(Console.fits(List.of("…"), List.of()));
    assertFalse(Console.fits(List.of("a", "…", "d"), List.of("a", "b")));
    assertFalse(Console.fits(List.of("a"), List.of("a", "b")));
  }

  private static void example(String line) {
    List<String> words = Console.words(line);
    Run.of(words.subList(1, words.size()).toArray(String[]::new)).ok();
  }

  static void check(Console.Shown shown) throws IOException {
    Run run = run(shown.command());
    List<String> lines = new ArrayList<>(run.err().lines().toList());
    lines.addAll(0, run.out().lines().toList());
    // A page that shows nothing below a command leaves its output out.
    assertTrue(
        shown.shown().isEmpty() || Console.fits(shown.shown(), lines),
        () -> shown + "\n" + String.join("\n", lines));
  }

  /** Runs a line of commands that are joined by pipes; the last may write into a file. */
  private static Run run(String line) throws IOException {
    List<String> words = Console.words(line);
    int redirection = words.indexOf(">");
    Run run = pipe(redirection < 0 ? words : words.subList(0, redirection));
    if (redirection < 0) {
      return run;
    }
    Path file = Path.of(words.get(redirection + 1));
    Files.createDirectories(file.toAbsolutePath().getParent());
    Files.writeString(file, run.out(), UTF_8);
    return new Run(run.status(), "", run.err());
  }

  private static Run pipe(List<String> words) {
    int bar = words.lastIndexOf("|");
    String in = bar < 0 ? "" : pipe(words.subList(0, bar)).out();
    List<String> last = words.subList(bar + 1, words.size());
    assertEquals(PROGRAM.strip(), last.get(0), "a page shows a command that no test can run");
    return Run.with(in, last.subList(1, last.size()).toArray(String[]::new));
  }

  private static List<Path> pages() throws IOException {
    try (Stream<Path> docs = Files.walk(Path.of("docs"))) {
      List<Path> pages = new ArrayList<>();
      pages.add(Path.of("README.md"));
      // What needs a server, or a sender, is run where there is one.
      docs.filter(file -> file.toString().endsWith(".md"))
          .filter(file -> !file.endsWith("server.md") && !file.endsWith("messages.md"))
          .sorted()
          .forEach(pages::add);
      return pages;
    }
  }
}
