package org.isopter.cli;

import static com.tngtech.archunit.lang.syntax.ArchRuleDefinition.classes;
import static com.tngtech.archunit.lang.syntax.ArchRuleDefinition.noClasses;
import static com.tngtech.archunit.library.dependencies.SlicesRuleDefinition.slices;
import static java.nio.charset.StandardCharsets.UTF_8;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.tngtech.archunit.core.domain.JavaClass;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Locale;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import java.util.TreeSet;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;

/**
 * The packages of all modules that the command carries: how large they are, which knows which, and
 * that a name means one thing. What is allowed to be otherwise stands with its reason in the tables
 * of the decisions.
 */
class RoomsTest {

  private static final int MOST = 25;
  private static final int LONGEST_COMMAND = 60;
  private static final Path COMMANDS = Path.of("cli/src/main/java/org/isopter/cli/command");
  private static final Path DECISIONS = Path.of("docs/decisions.md");
  private static final Pattern ROW =
      Pattern.compile("(?m)^\\| `([A-Za-z.]+)` \\| ([^|]{10,}) \\|$");
  private static final Pattern SKIPS =
      Pattern.compile("\\b(Assumptions|assumeTrue|assumeFalse|assumingThat)\\b|@Disabled|@Enabled");

  @Test
  void noPackageHoldsMoreThanOneCanLookOver() throws IOException {
    Map<String, Integer> large = new TreeMap<>();
    sources().forEach(type -> large.merge(type.getPackageName(), 1, Integer::sum));
    large.values().removeIf(count -> count <= MOST);
    assertWithin(large.keySet(), "large packages", large.toString());
  }

  @Test
  void aNameMeansOneThing() throws IOException {
    Map<String, Set<String>> places = new TreeMap<>();
    sources()
        .forEach(
            type ->
                places
                    .computeIfAbsent(type.getSimpleName(), name -> new TreeSet<>())
                    .add(type.getPackageName()));
    places.values().removeIf(packages -> packages.size() == 1);
    assertWithin(places.keySet(), "names that are used again", places.toString());
  }

  @Test
  void packagesKnowEachOtherOneWay() {
    slices().matching("org.isopter.(**)").should().beFreeOfCycles().check(OurClasses.ALL);
  }

  @Test
  void onlyTheCommandLineTalksToTheTerminal() {
    noClasses()
        .that()
        .resideOutsideOfPackage("org.isopter.cli..")
        .should()
        .accessField(System.class, "out")
        .orShould()
        .accessField(System.class, "err")
        .check(OurClasses.ALL);
  }

  /**
   * A command is its options and one call: what it does is a task, which Java callers reach too.
   */
  @Test
  void commandsAreOptionsAndOneCall() throws IOException {
    classes()
        .that()
        .resideInAPackage("org.isopter.cli.command")
        .should()
        .onlyDependOnClassesThat()
        .resideInAnyPackage(
            "java..", "picocli..", "org.jspecify..", "org.isopter.cli..", "org.isopter.task..")
        .check(OurClasses.ALL);
    Map<String, Integer> tooLong = new TreeMap<>();
    try (Stream<Path> files = Files.list(COMMANDS)) {
      files.forEach(file -> tooLong.put(file.getFileName().toString(), lines(file)));
    }
    assertFalse(tooLong.isEmpty());
    tooLong.values().removeIf(lines -> lines <= LONGEST_COMMAND);
    assertEquals(Map.of(), tooLong, "commands of more than " + LONGEST_COMMAND + " lines");
  }

  /** What a command does must be within reach of Java, so that it does not do it with libraries. */
  @Test
  void commandsLeaveTheWorkToOthers() {
    noClasses()
        .that()
        .resideInAPackage("org.isopter.cli..")
        .should()
        .dependOnClassesThat()
        .resideInAnyPackage("ca.uhn..", "org.hl7..", "org.duckdb..", "java.sql..", "org.jfree..")
        .check(OurClasses.ALL);
  }

  /** A test that is skipped on one machine says nothing there and is not missed. */
  @Test
  void noTestIsEverSkipped() throws IOException {
    try (Stream<Path> files = Files.walk(Path.of(""))) {
      Set<String> skipping =
          files
              .filter(file -> file.toString().matches("(?!target|cli/target).*/src/test/.*\\.java"))
              .filter(file -> !file.endsWith("RoomsTest.java"))
              .filter(file -> SKIPS.matcher(Texts.of(file)).find())
              .map(Path::toString)
              .collect(Collectors.toCollection(TreeSet::new));
      assertEquals(Set.of(), skipping);
    }
  }

  private static void assertWithin(Set<String> found, String table, String all) throws IOException {
    Set<String> without = new TreeSet<>(found);
    without.removeAll(reasons(table).keySet());
    assertEquals(Set.of(), without, () -> table + " without a reason in " + DECISIONS + "; " + all);
  }

  /** Returns the rows of the table under a heading of the decisions. */
  private static Map<String, String> reasons(String table) throws IOException {
    String page = Files.readString(DECISIONS, UTF_8);
    int start = page.toLowerCase(Locale.ROOT).indexOf("### " + table);
    assertTrue(start >= 0, DECISIONS + " has no table of " + table);
    int end = page.indexOf("\n#", start + 4);
    return ROW.matcher(page.substring(start, end < 0 ? page.length() : end))
        .results()
        .collect(Collectors.toMap(row -> row.group(1), row -> row.group(2)));
  }

  /** Returns the classes that have a file of their own. */
  private static Stream<JavaClass> sources() {
    return OurClasses.ALL.stream()
        .filter(type -> !type.isNestedClass() && !type.getSimpleName().equals("package-info"));
  }

  private static int lines(Path file) {
    return (int) Texts.of(file).lines().count();
  }
}
