package org.isopter.cli;

import static java.nio.charset.StandardCharsets.UTF_8;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.InputStream;
import java.io.PrintStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.TreeSet;
import java.util.regex.MatchResult;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import org.isopter.task.io.Streams;
import org.isopter.task.report.ExitStatus;
import org.isopter.task.report.RunLog;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Every command has a block of Java on a page, which does the same for a program. */
class JavaTasksTest {

  private static final Path PAGE = Path.of("docs/java.md");
  private static final Pattern HEADING = Pattern.compile("(?m)^## ([a-z0-9-]+)$");

  @TempDir private Path temp;

  @Test
  void everyCommandHasABlock() throws IOException {
    TreeSet<String> commands = new TreeSet<>(MainTest.commands());
    // A script for the shell is of no use to a program.
    commands.remove("completion");
    assertEquals(commands, new TreeSet<>(headings()));
    assertEquals(headings().size() + 1, JavaBlocks.of(PAGE).size());
  }

  @Test
  void everyBlockRunsToItsEnd() throws Exception {
    List<String> names = headings();
    List<String> blocks = JavaBlocks.of(PAGE);
    Files.deleteIfExists(Path.of("target/java/sent.ndjson"));
    try (LoopbackServer server = new LoopbackServer()) {
      Map<String, String> sources = new LinkedHashMap<>();
      for (int i = 0; i < names.size(); i++) {
        String block = blocks.get(i + 1).replace("127.0.0.1:8080", server.host());
        sources.put("Block" + i, source("Block" + i, "RunLog log", block));
      }
      List<Class<?>> compiled = JavaBlocks.compiled(sources, temp);
      for (int i = 0; i < names.size(); i++) {
        run(names.get(i), compiled.get(i));
      }
    }
  }

  @Test
  void theBlockThatMakesALogCompiles() throws Exception {
    String source = source("Log", "", JavaBlocks.of(PAGE).get(0) + "log.say(\"\");\n");
    assertEquals("Log", JavaBlocks.compiled("Log", source, temp).getSimpleName());
  }

  private static void run(String command, Class<?> block) throws Exception {
    ByteArrayOutputStream data = new ByteArrayOutputStream();
    ByteArrayOutputStream words = new ByteArrayOutputStream();
    RunLog log =
        RunLog.on(
            new Streams(
                InputStream.nullInputStream(),
                new PrintStream(data, true, UTF_8),
                new PrintStream(words, true, UTF_8)));
    block.getMethod("run", RunLog.class).invoke(null, log);
    String all = command + ": " + words.toString(UTF_8);
    assertEquals(ExitStatus.OK, log.status(), all);
    long written =
        switch (command) {
          case "profiles" -> Files.size(Path.of("target/java/isopter.tgz"));
          case "sheet" -> Files.size(Path.of("target/java/sheet.html"));
          default -> data.size() + words.size();
        };
    assertTrue(written > 0, all);
  }

  private static String source(String name, String parameter, String block) {
    return JavaBlocks.imports(block + " RunLog")
        + "import java.nio.file.Path;\nimport java.util.List;\nimport java.util.Optional;\n"
        + "public final class "
        + name
        + " {\n  public static void run("
        + parameter
        + ") throws Exception {\n"
        + block
        + "  }\n}\n";
  }

  private static List<String> headings() throws IOException {
    return HEADING
        .matcher(Files.readString(PAGE, UTF_8))
        .results()
        .map((MatchResult heading) -> heading.group(1))
        .collect(Collectors.toList());
  }
}
