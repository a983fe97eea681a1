package org.isopter.spark;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.io.PrintWriter;
import java.io.StringWriter;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import java.util.stream.Stream;
import org.isopter.mapper.privacy.SecretKey;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import picocli.CommandLine;

/** What the job takes and refuses, and what it says. */
class PoolJobTest {

  private static final Map<String, String> SETTINGS =
      Map.of(
          "spark.master", "local[2]",
          "spark.driver.host", "127.0.0.1",
          "spark.driver.bindAddress", "127.0.0.1",
          "spark.ui.enabled", "false",
          "spark.sql.shuffle.partitions", "2");

  private static final Map<String, String> KEY = Map.of(SecretKey.VARIABLE, TestFiles.SECRET);

  @TempDir Path folder;
  private final StringWriter said = new StringWriter();

  /** As {@code spark-submit} hands its options on. */
  @BeforeEach
  void set() {
    SETTINGS.forEach(System::setProperty);
  }

  @AfterEach
  void clear() {
    SETTINGS.keySet().forEach(System::clearProperty);
  }

  @Test
  void readsAFileAndAccountsForEveryLine() throws IOException {
    Path key = Files.writeString(folder.resolve("key"), TestFiles.SECRET + "\n");
    Path in = folder.resolve("_in [1].ndjson");
    String bundle = TestFiles.FOREIGN.formatted(TestFiles.PRESSURE, TestFiles.PRESSURE);
    Files.writeString(in, bundle + "\n\n" + TestFiles.PRESSURE + "\n");
    Path out = folder.resolve("out");
    int status =
        run(Map.of(), "--key-file", key.toString(), "--output", out.toString(), folder.toString());
    assertEquals(0, status, said.toString());
    assertTrue(said.toString().contains("2 documents read, 1 of them refused"), said.toString());
    String counts = Files.readString(out.resolve("counts.json"));
    assertTrue(counts.startsWith("{\"documents\":2,\"refused\":1,\"resources\":3,"), counts);
    List<String> left = left(out);
    assertTrue(
        left.contains(
            "{\"what\":\"refused\",\"type\":\"Observation\",\"reasons\":[\"not-in-a-bundle\"]}"),
        left.toString());
    assertTrue(Files.isDirectory(out.resolve("findings/finding=intraocular-pressure")));
    said.getBuffer().setLength(0);
    assertEquals(2, run(KEY, "--output", out.toString(), in.toString()));
    assertTrue(said.toString().contains("a new or empty folder"), said.toString());
  }

  @Test
  void identitiesStayOnlyWhereItIsSaid() throws IOException {
    Path in = folder.resolve("in.ndjson");
    Files.writeString(in, TestFiles.PRESSURE);
    Path out = folder.resolve("out");
    assertEquals(2, run(Map.of(), "--output", out.toString(), in.toString()));
    assertTrue(said.toString().contains("no key"), said.toString());
    assertFalse(Files.exists(out));
    assertEquals(0, run(Map.of(), "--identified", "--output", out.toString(), in.toString()));
    assertTrue(left(out).toString().contains(in.toString()), left(out).toString());
  }

  @Test
  void whatIsNotThereIsRefused() {
    String in = folder.toString();
    String out = folder.resolve("out").toString();
    assertEquals(2, run(KEY, "--output", out, folder.resolve("nowhere").toString()));
    assertTrue(said.toString().contains("nowhere: saw no file"), said.toString());
    assertEquals(2, run(Map.of(SecretKey.VARIABLE, "short"), "--output", out, in));
    assertTrue(said.toString().contains("at least 24 bytes"), said.toString());
    assertEquals(2, run(Map.of(), "--key-file", folder + "/none", "--output", out, in));
    assertTrue(said.toString().contains("a file with the secret"), said.toString());
  }

  private int run(Map<String, String> environment, String... arguments) {
    CommandLine line = PoolJob.line(environment);
    line.setErr(new PrintWriter(said, true));
    return line.execute(arguments);
  }

  private static List<String> left(Path pool) throws IOException {
    try (Stream<Path> files = Files.list(pool.resolve("leftover"))) {
      return files
          .filter(file -> file.toString().endsWith(".txt"))
          .flatMap(file -> lines(file).stream())
          .toList();
    }
  }

  private static List<String> lines(Path file) {
    try {
      return Files.readAllLines(file);
    } catch (IOException failed) {
      throw new java.io.UncheckedIOException(failed);
    }
  }
}
