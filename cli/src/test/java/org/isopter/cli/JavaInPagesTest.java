package org.isopter.cli;

import static java.nio.charset.StandardCharsets.UTF_8;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.isopter.model.exam.Seen;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** What a Java programmer takes from the first pages works as it stands there. */
class JavaInPagesTest {

  private static final Path README = Path.of("README.md");
  private static final Path DEVELOPERS = Path.of("DEVELOPERS.md");
  private static final Pattern COORDINATES =
      Pattern.compile(
          "<groupId>([^<]+)</groupId>\\s*<artifactId>([^<]+)</artifactId>\\s*<version>([^<]+)<");

  @TempDir private Path temp;

  @Test
  void readmeTakesARecordToFhirAndBackAndAsksForAPressure() throws Exception {
    String block = JavaBlocks.of(README).get(0);
    int last = block.stripTrailing().lastIndexOf('\n') + 1;
    String source =
        JavaBlocks.imports(block)
            + "public final class Block {\n  public static Object run(String yaml) {\n"
            + block.substring(0, last)
            + "return "
            + block.substring(last)
            + "  }\n}\n";
    Class<?> type = JavaBlocks.compiled("Block", source, temp);
    String yaml = Files.readString(Path.of("docs/demo/02-net-mender.yaml"), UTF_8);
    Object first = type.getMethod("run", String.class).invoke(null, yaml);
    Seen<?> pressure = (Seen<?>) ((Optional<?>) first).orElseThrow();
    assertEquals("13 mmHg", pressure.value().toString());
  }

  @Test
  void theEntryThatDevelopersAreShownIsAnEntry() throws Exception {
    String block = JavaBlocks.of(DEVELOPERS).get(0);
    String source =
        "package org.isopter.model.catalogue;\n"
            + JavaBlocks.imports(block)
            + "public final class Block {\n  static final Entries ENTRIES = new Entries();\n"
            + block
            + "}\n";
    assertEquals(
        "Block",
        JavaBlocks.compiled("org.isopter.model.catalogue.Block", source, temp).getSimpleName());
  }

  @Test
  void readmeNamesTheArtifactsOfThisBuild() throws Exception {
    Matcher readme = COORDINATES.matcher(Files.readString(README, UTF_8));
    Matcher mapper = COORDINATES.matcher(Files.readString(Path.of("mapper/pom.xml"), UTF_8));
    Matcher root = COORDINATES.matcher(Files.readString(Path.of("pom.xml"), UTF_8));
    assertTrue(readme.find() && mapper.find() && root.find());
    assertEquals(root.group(1), readme.group(1));
    assertEquals(root.group(3), readme.group(3));
    String pom = Files.readString(Path.of("mapper/pom.xml"), UTF_8);
    assertTrue(pom.contains("<artifactId>" + readme.group(2) + "</artifactId>"), readme.group(2));
  }
}
