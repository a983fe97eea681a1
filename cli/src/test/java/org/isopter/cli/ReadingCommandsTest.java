package org.isopter.cli;

import static java.nio.charset.StandardCharsets.UTF_8;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.ByteArrayInputStream;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.PrintStream;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Locale;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import org.isopter.task.io.Streams;
import org.isopter.task.report.ExitStatus;
import org.junit.jupiter.api.DynamicTest;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.TestFactory;
import org.junit.jupiter.api.io.TempDir;

/** What the commands note, summary and compare print of the demo, as it was reviewed. */
class ReadingCommandsTest {

  @TempDir Path folder;

  private static final Path ROOT =
      Files.isDirectory(Path.of("docs", "demo")) ? Path.of("") : Path.of("..");
  private static final Path DEMO = ROOT.resolve(Path.of("docs", "demo"));
  private static final Path GOLDEN = ROOT.resolve(Path.of("cli/src/test/resources/golden"));

  /** What a full examination may fill of a page. */
  private static final int LINES = 45;

  private static final String[] HEADER = {
    "--id", "n-1", "--subject", "p-1", "--performed", "2026-03-03T09:10:00Z"
  };

  private final ByteArrayOutputStream out = new ByteArrayOutputStream();
  private final ByteArrayOutputStream err = new ByteArrayOutputStream();

  private int run(String... args) {
    return Main.run(
        new Streams(
            new ByteArrayInputStream(new byte[0]),
            new PrintStream(out, false, UTF_8),
            new PrintStream(err, false, UTF_8)),
        args);
  }

  private static String[] note(String text, String... more) {
    return Stream.of(Stream.of("note", text), Stream.of(HEADER), Stream.of(more))
        .flatMap(part -> part)
        .toArray(String[]::new);
  }

  private static void golden(String name, String actual) {
    Path file = GOLDEN.resolve(name);
    try {
      if ("update".equals(System.getProperty("golden"))) {
        Files.createDirectories(GOLDEN);
        Files.writeString(file, actual, UTF_8);
      }
      assertEquals(Files.readString(file, UTF_8), actual, file.toString());
    } catch (IOException missing) {
      throw new UncheckedIOException(
          file + " is missing: review it after -Dgolden=update", missing);
    }
  }

  private static List<Path> demo() throws IOException {
    try (Stream<Path> files = Files.list(DEMO)) {
      return files.filter(file -> file.toString().matches(".*\\.(yaml|json)")).sorted().toList();
    }
  }

  @TestFactory
  Stream<DynamicTest> putsEveryDemoIntoReviewedWords() throws IOException {
    return demo().stream()
        .map(
            file ->
                DynamicTest.dynamicTest(
                    file.getFileName().toString(),
                    () -> {
                      ReadingCommandsTest fresh = new ReadingCommandsTest();
                      assertEquals(ExitStatus.OK, fresh.run("summary", file.toString()));
                      String page = fresh.out.toString(UTF_8);
                      golden("summary-" + stem(file) + ".txt", page);
                      assertTrue(page.split("\n").length <= LINES, page);
                      checkWords(page);
                    }));
  }

  private static String stem(Path file) {
    return file.getFileName().toString().replaceAll("\\.\\w+$", "");
  }

  /** What no page may say, whatever it is about. */
  private static void checkWords(String page) {
    String text = page.replaceAll("\\s+", " ").toLowerCase(Locale.ROOT);
    for (String never :
        List.of(
            "(fields? (is|are)? ?(normal|full)|(normal|full) (visual )?fields?)",
            "afferent defect (in |of )?both",
            "pituitary",
            "\\burgent|\\bemergency(?! department)|must|should",
            "[a-z]_[a-z]|optional\\[|\\{")) {
      assertFalse(Pattern.compile(never).matcher(text).find(), never + " in " + page);
    }
  }

  @Test
  void writesMarkdownShorthandAndTheListThatWasAskedFor() {
    String bell = DEMO.resolve("07-bell-founder.yaml").toString();
    assertEquals(0, run("summary", bell, "--format", "markdown"));
    golden("summary-markdown.md", out.toString(UTF_8));
    out.reset();
    assertEquals(0, run("summary", bell, "--format", "shorthand"));
    golden("summary-shorthand.txt", out.toString(UTF_8));
    assertEquals(2, run("summary", bell, "--format", "shorthand", "--detail"));
    out.reset();
    assertEquals(0, run("summary", bell, "--urgency-hints", "uk-c205"));
    assertTrue(out.toString(UTF_8).contains("College of Optometrists (United Kingdom)"));
    assertEquals(2, run("summary", bell, "--urgency-hints", "mars"));
  }

  @Test
  void keepsArithmeticReasonsAndSourcesForWhoAsks() {
    String file = DEMO.resolve("02-net-mender.yaml").toString();
    assertEquals(0, run("summary", file));
    assertFalse(out.toString(UTF_8).contains("logMAR is") || out.toString(UTF_8).contains("[1]"));
    out.reset();
    assertEquals(0, run("summary", file, "--detail"));
    golden("summary-detail.txt", out.toString(UTF_8));
    checkWords(out.toString(UTF_8));
  }

  @Test
  void comparesTwoVisitsAsReviewed() {
    String before = DEMO.resolve("02-net-mender.yaml").toString();
    String after = DEMO.resolve("03-net-mender-three-months-later.yaml").toString();
    assertEquals(0, run("compare", after, before), err.toString(UTF_8));
    golden("compare.txt", out.toString(UTF_8));
    out.reset();
    assertEquals(0, run("compare", before, after, "--format", "json"));
    golden("compare.json", out.toString(UTF_8));
  }

  @Test
  void refusesToCompareTwoPeople() {
    int status = run("compare", DEMO + "/02-net-mender.yaml", DEMO + "/04-rope-maker.yaml");
    assertEquals(ExitStatus.REFUSED, status);
    assertTrue(err.toString(UTF_8).contains("not certainly the same"), err.toString(UTF_8));
    assertEquals(2, run("compare", DEMO + "/02-net-mender.yaml"));
  }

  @Test
  void turnsShorthandIntoARecord() {
    assertEquals(0, run(note("VA R 6/9 ph 6/6 L 6/6; PERRLA")), err.toString(UTF_8));
    golden("note.yaml", out.toString(UTF_8));
  }

  @Test
  void refusesWhatItDoesNotUnderstandUnlessAskedToKeepIt() {
    assertEquals(ExitStatus.REFUSED, run(note("VA R 6/9; frobnicate")));
    assertEquals("", out.toString(UTF_8));
    assertTrue(err.toString(UTF_8).contains("line 1, column 11: \"frobnicate\" was not read"));
    assertEquals(0, run(note("VA R 6/9; frobnicate", "--keep-unread", "--format", "json")));
    assertTrue(out.toString(UTF_8).contains("\"remark\": \"frobnicate\""), out.toString(UTF_8));
  }

  /** FHIR R4, transaction: a conditional reference is a search that finds one resource. */
  @Test
  void refersToPatientsByASearchInATransactionAlone() {
    String file = DEMO.resolve("02-net-mender.yaml").toString();
    assertEquals(0, run("to-fhir", "--as", "transaction", file));
    assertFalse(out.toString(UTF_8).contains("Patient?identifier="));
    assertEquals(2, run("to-fhir", "--search-patients", file));
    assertFalse(out.toString(UTF_8).contains("Patient?identifier="));
    assertEquals(0, run("to-fhir", "--as", "transaction", "--search-patients", file));
    assertTrue(out.toString(UTF_8).contains("\"Patient?identifier="));
  }

  /** The address follows from the identifier, and is read over when the record comes back. */
  @Test
  void refersToPatientsByAnAddressThatIsReadOver() throws IOException {
    String file = DEMO.resolve("02-net-mender.yaml").toString();
    assertEquals(0, run("to-fhir", "--patient-addresses", file));
    String bundle = out.toString(UTF_8);
    java.util.Set<String> addresses = new java.util.TreeSet<>();
    Pattern.compile("\"reference\" *: *\"(Patient/[^\"]+)\"")
        .matcher(bundle)
        .results()
        .forEach(found -> addresses.add(found.group(1)));
    assertEquals(1, addresses.size(), addresses::toString);
    Path written = Files.writeString(folder.resolve("bundle.json"), bundle);
    out.reset();
    assertEquals(0, run("from-fhir", written.toString(), "--format", "json"));
    String read = out.toString(UTF_8);
    assertFalse(err.toString(UTF_8).contains("no such element"), err.toString(UTF_8));
    Path plain = folder.resolve("plain.json");
    assertEquals(0, run("to-fhir", file, "--output", plain.toString()));
    out.reset();
    assertEquals(0, run("from-fhir", plain.toString(), "--format", "json"));
    assertEquals(out.toString(UTF_8), read);
    String both = "--search-patients";
    assertEquals(2, run("to-fhir", "--as", "transaction", "--patient-addresses", both, file));
  }

  @Test
  void addsWhatFollowsOnlyWhenAsked() {
    String file = DEMO.resolve("02-net-mender.yaml").toString();
    assertEquals(0, run("to-fhir", file));
    assertFalse(out.toString(UTF_8).contains("derived-statement"));
    assertEquals(0, run("to-fhir", "--derived", file));
    assertTrue(out.toString(UTF_8).contains("derived-statement"));
  }
}
