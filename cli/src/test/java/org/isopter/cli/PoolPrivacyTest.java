package org.isopter.cli;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.io.OutputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.sql.SQLException;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.concurrent.TimeUnit;
import java.util.stream.Stream;
import org.isopter.mapper.io.OwnerFile;
import org.isopter.mapper.store.PoolTables;
import org.isopter.task.report.ExitStatus;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;

/** What a pool gives away, and what it leaves behind. */
class PoolPrivacyTest {

  private static final String NAME = "quarrender-1950-06-01";

  @TempDir Path folder;

  private String key = "";

  @BeforeEach
  void writeAKey() throws IOException {
    Path own = folder.resolve("key");
    OwnerFile.create(own);
    key = Files.writeString(own, "f3a9c1077be24d5586e0b1d94a6c2f18").toString();
  }

  @Test
  void aKeyThatOthersCanReadIsReported() throws IOException {
    Path inputs = inputs("a");
    assertFalse(pool(inputs, "one").contains("can be read by others"));
    Files.setPosixFilePermissions(
        Path.of(key), java.nio.file.attribute.PosixFilePermissions.fromString("rw-r-----"));
    assertTrue(pool(inputs, "two").contains("key can be read by others: make it yours alone"));
  }

  /** The names of inputs may name persons: the same inputs under other names give the same pool. */
  @Test
  void theNamesOfInputsGiveNothingAway() throws IOException {
    Path telling = inputs(NAME);
    Path plain = inputs("a");
    pool(telling, "one", "--report", folder.resolve("one.report").toString());
    pool(plain, "two", "--report", folder.resolve("two.report").toString());
    for (String file : List.of("findings.csv", "examinations.csv", "leftover.ndjson", "risk.csv")) {
      assertArrayEquals(
          Files.readAllBytes(folder.resolve("one").resolve(file)),
          Files.readAllBytes(folder.resolve("two").resolve(file)),
          file);
    }
    try (Stream<Path> files = Files.walk(folder.resolve("one"))) {
      for (Path file : files.filter(Files::isRegularFile).toList()) {
        assertFalse(file.toString().contains(NAME));
        assertFalse(
            Files.readString(file, java.nio.charset.StandardCharsets.ISO_8859_1)
                .contains("quarrender"),
            file.toString());
      }
    }
    String report = Files.readString(folder.resolve("one.report"));
    assertFalse(report.contains("quarrender") || report.contains("Patient/"), report);
  }

  @Test
  void theReportNamesEveryRefusedAndLeftOverInputByCause() throws IOException {
    Path inputs = inputs(NAME);
    Path report = folder.resolve("report");
    pool(inputs, "pool", "--report", report.toString());
    List<String> lines = Files.readAllLines(report);
    assertEquals(1, lines.stream().filter(line -> line.contains("a document was refused")).count());
    assertTrue(lines.stream().anyMatch(line -> line.contains("input 2: a document was refused")));
    assertTrue(lines.stream().anyMatch(line -> line.contains("cause no-side")));
    long times =
        Files.readAllLines(folder.resolve("pool/leftover.ndjson")).stream()
            .mapToLong(line -> Long.parseLong(line.replaceAll(".*\"times\":(\\d+)}", "$1")))
            .sum();
    assertEquals(times, lines.size());
  }

  /** What refuses the run is met with the first document, and is no mistake of the program. */
  @Test
  void aPoolThatWasMadeWithAnotherKeyIsNotAddedTo() throws IOException {
    Path inputs = inputs("a");
    pool(inputs, "grown", "--add");
    Path own = folder.resolve("another");
    OwnerFile.create(own);
    Files.writeString(own, "0b83d7e5aa1946c2b7f0e94c2d61f35a");
    String grown = folder.resolve("grown").toString();
    Run run =
        Run.of("pool", inputs.toString(), "--add", "--key-file", own.toString(), "--output", grown);
    assertEquals(ExitStatus.USAGE, run.status(), run::toString);
    assertTrue(run.err().contains("saw a pool that was made with another key"), run.err());
    assertFalse(run.err().contains("internal"), run.err());
  }

  /** After the key was changed, the origins lead from the pseudonyms of old pools to the new. */
  @Test
  void aKeyIsReplacedAndOldPoolsCanStillBeJoined() throws IOException, SQLException {
    Path inputs = inputs("a");
    pool(inputs, "old");
    String former = key;
    Path own = folder.resolve("new");
    OwnerFile.create(own);
    key = Files.writeString(own, "0b83d7e5aa1946c2b7f0e94c2d61f35a").toString();
    Path origins = folder.resolve("origins");
    pool(inputs, "new-pool", "--origins", origins.toString(), "--older-key-file", former);
    try (PoolTables now = PoolTables.open(folder.resolve("new-pool"))) {
      String old = "read_csv('" + folder.resolve("old/examinations.csv") + "', all_varchar = true)";
      String joined =
          " FROM examinations e JOIN (SELECT DISTINCT examination, subject, older_examination,"
              + " older_subject FROM read_json('%s', format = 'newline_delimited')) o"
                  .formatted(origins)
              + " USING (examination, subject) JOIN "
              + old
              + " f ON f.examination = older_examination AND f.subject = older_subject"
              + " AND f.eye = e.eye";
      List<List<java.util.Optional<Object>>> counts =
          now.ask(
                  "SELECT (SELECT count(*) FROM examinations), (SELECT count(*)"
                      + joined
                      + "), (SELECT count(*)"
                      + joined
                      + " WHERE e.examination = older_examination)")
              .cells();
      assertEquals(counts.get(0).get(0), counts.get(0).get(1));
      assertEquals(java.util.Optional.of(0L), counts.get(0).get(2));
    }
    Run alone =
        run(
            "pool",
            inputs.toString(),
            "-o",
            folder.resolve("x").toString(),
            "--older-key-file",
            key);
    assertTrue(alone.err().contains("wanted --origins beside it"), alone.err());
  }

  /** A run that is asked to end leaves nothing that may name a person. */
  @Test
  @Timeout(value = 3, unit = TimeUnit.MINUTES)
  void aRunThatIsAskedToEndLeavesNothing() throws IOException, InterruptedException {
    List<String> command = new ArrayList<>();
    command.add(Path.of(System.getProperty("java.home"), "bin", "java").toString());
    command.addAll(
        List.of("-cp", System.getProperty("java.class.path"), Main.class.getName(), "pool", "-"));
    command.addAll(List.of("--input-format", "ndjson", "--key-file", key));
    command.addAll(List.of("--output", folder.resolve("pool").toString()));
    command.addAll(List.of("--origins", folder.resolve("origins").toString()));
    Process run = new ProcessBuilder(command).redirectErrorStream(true).start();
    try (OutputStream waiting = run.getOutputStream()) {
      waiting.write('\n');
      waiting.flush();
      while (names().stream().filter(name -> name.endsWith(".part")).count() < 2) {
        assertTrue(run.isAlive(), "the run ended by itself");
        Thread.sleep(20);
      }
      run.destroy();
      run.waitFor();
    } catch (IOException ended) {
      assertFalse(run.isAlive(), ended::toString);
    }
    assertEquals(List.of("key"), names());
  }

  private List<String> names() throws IOException {
    try (Stream<Path> inside = Files.list(folder)) {
      return inside.map(path -> path.getFileName().toString()).sorted().toList();
    }
  }

  private Path inputs(String name) throws IOException {
    Path inputs = Files.createDirectories(folder.resolve("inputs-" + name));
    Files.copy(Path.of("docs/foreign/clinic.json"), inputs.resolve(name + "-1.json"));
    Files.writeString(inputs.resolve(name + "-2.json"), "{\"no\": \"record\"}");
    return inputs;
  }

  /** Pools inputs and returns what was said of it. */
  private String pool(Path inputs, String output, String... more) {
    Stream<String> usual =
        Stream.of(
            "pool",
            inputs.toString(),
            "--format",
            "csv,parquet",
            "-o",
            folder.resolve(output).toString());
    Run run = run(Stream.concat(usual, Arrays.stream(more)).toArray(String[]::new));
    assertTrue(run.err().contains("tables written"), run::toString);
    return run.err();
  }

  private Run run(String... arguments) {
    Stream<String> all = Stream.concat(Stream.of(arguments), Stream.of("--key-file", key));
    return Run.of(all.toArray(String[]::new));
  }
}
