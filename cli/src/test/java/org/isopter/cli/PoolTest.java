package org.isopter.cli;

import static java.nio.charset.StandardCharsets.UTF_8;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.InputStream;
import java.io.OutputStream;
import java.io.PrintStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.attribute.PosixFilePermissions;
import java.sql.SQLException;
import java.util.Arrays;
import java.util.List;
import java.util.stream.Stream;
import java.util.zip.GZIPOutputStream;
import org.isopter.cli.option.ForeignOptions;
import org.isopter.mapper.foreign.reading.Options;
import org.isopter.mapper.foreign.reading.Release;
import org.isopter.mapper.io.OwnerFile;
import org.isopter.mapper.io.UnwritableException;
import org.isopter.mapper.pool.PoolPlan;
import org.isopter.mapper.pool.PoolReader;
import org.isopter.mapper.pool.PoolRun;
import org.isopter.mapper.store.PoolTables;
import org.isopter.model.catalogue.Catalogue;
import org.isopter.task.input.InputForm;
import org.isopter.task.input.InputSource;
import org.isopter.task.io.Streams;
import org.isopter.task.pool.PoolFeed;
import org.isopter.task.pool.TemporaryPool;
import org.isopter.task.report.ExitStatus;
import org.isopter.task.report.IssueSink;
import org.isopter.task.report.RunLog;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** The command pool: what it refuses, so that nothing is lost. */
class PoolTest {

  @TempDir Path folder;

  private Path input = Path.of("");
  private Path pool = Path.of("");
  private String key = "";

  @BeforeEach
  void copyAnInput() throws IOException {
    input = Files.copy(Path.of("docs/foreign/clinic.json"), folder.resolve("clinic.json"));
    pool = folder.resolve("pool");
    Path own = folder.resolve("key");
    OwnerFile.create(own);
    key = Files.writeString(own, "f3a9c1077be24d5586e0b1d94a6c2f18").toString();
  }

  @Test
  void theLeftOverMayNotBeWrittenOverAnInput() throws IOException {
    Run run = pool("--leftover", folder.resolve("./clinic.json").toString());
    assertRefused(run, "--leftover: saw the input");
    assertEquals(Files.size(Path.of("docs/foreign/clinic.json")), Files.size(input));
  }

  @Test
  void theLeftOverMayNotLieInTheFolderThatIsMade() {
    Run run = pool("--leftover", pool.resolve("left.ndjson").toString());
    assertRefused(run, "wanted a file outside of it");
  }

  @Test
  void anInputInTheFolderThatIsReplacedIsRefused() {
    pool("--bundles").ok();
    Run run =
        Run.of(
            "pool",
            pool.resolve("bundles.ndjson").toString(),
            "--key-file",
            key,
            "--output",
            pool.toString(),
            "--replace");
    assertEquals(ExitStatus.USAGE, run.status(), run::toString);
    assertTrue(run.err().contains("--output: saw the input"), run.err());
    assertTrue(Files.exists(pool.resolve("bundles.ndjson")));
  }

  @Test
  void whereNoInputIsFoundAnOlderPoolStays() throws IOException {
    pool("--bundles").ok();
    String gone = folder.resolve("misspelt.json").toString();
    Run run = Run.of("pool", gone, "--key-file", key, "--output", pool.toString(), "--replace");
    assertEquals(ExitStatus.USAGE, run.status(), run::toString);
    assertTrue(run.err().contains("nothing was written"), run.err());
    assertTrue(Files.exists(pool.resolve("bundles.ndjson")));
    try (Stream<Path> inside = Files.list(folder)) {
      assertEquals(3, inside.count());
    }
  }

  @Test
  void aKeyThatIsNoneIsToldByWhereItIs() throws IOException {
    Path bad = Files.writeString(folder.resolve("key.txt"), "short");
    Run run = Run.of("pool", input.toString(), "--key-file", bad.toString(), "-o", pool.toString());
    assertRefused(run, bad + ": saw 5 bytes");
    Files.write(bad, new byte[] {-1, -2, 48, 48, 48, 48, 48, 48, 48, 48, 48, 48, 48, 48, 48, 48});
    run = Run.of("pool", input.toString(), "--key-file", bad.toString(), "-o", pool.toString());
    assertRefused(run, "bytes that are no UTF-8");
  }

  /** The key of the demo is on the page: with it, anyone could be found again. */
  @Test
  void theKeyOfTheDemoIsForThePersonsOfTheDemoAlone() {
    key = "docs/key-for-the-demo.txt";
    assertRefused(pool(), "a person who is not of the demo");
    Run demo =
        Run.of("pool", "docs/demo", "--key-file", key, "--output", folder.resolve("d").toString());
    assertEquals(ExitStatus.OK, demo.status(), demo::toString);
  }

  @Test
  void theOriginsArePrivateAndNameTheInput() throws IOException {
    Path origins = folder.resolve("origins.ndjson");
    pool("--origins", origins.toString()).ok();
    assertTrue(Files.readString(origins).contains(input.toString()));
    assertEquals(
        "rw-------", PosixFilePermissions.toString(Files.getPosixFilePermissions(origins)));
  }

  @Test
  void whatAPoolWroteIsNotPooledAgain() {
    pool("--bundles").ok();
    Run run =
        Run.of(
            "pool",
            pool.resolve("bundles.ndjson").toString(),
            "--key-file",
            key,
            "--output",
            folder.resolve("again").toString());
    assertEquals(ExitStatus.REFUSED, run.status(), run::toString);
    assertTrue(run.err().contains("0 examinations"), run.err());
  }

  @Test
  void whatIsReadTwiceIsTold() {
    String again = input.toString();
    Run run = Run.of("pool", again, again, "--key-file", key, "--output", pool.toString()).ok();
    assertTrue(run.err().contains("1 examination was read more than once"), run.err());
  }

  @Test
  void anInputThatBreaksOffIsLeftOver() throws IOException {
    byte[] whole = Run.of("generate", "--persons", "40").ok().out().getBytes(UTF_8);
    ByteArrayOutputStream packed = new ByteArrayOutputStream();
    try (OutputStream zip = new GZIPOutputStream(packed)) {
      zip.write(whole);
    }
    byte[] half = Arrays.copyOf(packed.toByteArray(), packed.size() / 2);
    Path broken = Files.write(folder.resolve("half.ndjson.gz"), half);
    Run run = Run.of("pool", broken.toString(), "--key-file", key, "--output", pool.toString());
    assertEquals(ExitStatus.INTERNAL, run.status(), run::toString);
    assertTrue(run.err().contains("read, 1 of them refused"), run.err());
    assertEquals(
        "{\"what\":\"refused\",\"type\":\"other\",\"reasons\":[\"unreadable\"],\"times\":1}\n",
        Files.readString(pool.resolve("leftover.ndjson")));
  }

  /** A mistake in the program meets a whole batch, and would meet it again with each document. */
  @Test
  void aMistakeEndsTheRun() throws IOException {
    int[] asked = {0};
    PoolReader reader = new PoolReader(Catalogue.standard(), Options.usual(), Release.R4);
    try (PoolRun run = PoolRun.begin(Catalogue.standard(), reader, PoolPlan.identified(pool))) {
      PoolFeed feed =
          new PoolFeed(
              run,
              source -> {
                asked[0]++;
                throw new IllegalStateException("a mistake");
              });
      InputSource source = InputSource.of(input.toString(), InputForm.JSON, input, input);
      RunLog log = log();
      assertThrows(UnwritableException.class, () -> feed.feed(log, List.of(source, source)));
    }
    assertEquals(1, asked[0]);
    assertFalse(Files.exists(pool));
  }

  @Test
  void aFailureNamesThePlaceAsItIsWritten() throws IOException {
    Path file = Files.writeString(folder.resolve("File"), "");
    String place = file.resolve("Pool").toString();
    Run run = Run.of("pool", input.toString(), "--key-file", key, "--output", place);
    assertEquals(ExitStatus.INTERNAL, run.status(), run::toString);
    assertTrue(run.err().contains("cannot write " + place + " (not a directory)"), run.err());
    Files.createDirectory(pool);
    Files.writeString(pool.resolve("findings.parquet"), "no table");
    Files.writeString(pool.resolve("examinations.parquet"), "no table");
    String output = Run.of("describe", pool.toString()).err();
    assertTrue(output.contains("'" + pool.resolve("findings.parquet") + "'"), output);
  }

  /** A run that is killed may leave them: in them nobody is named, and each input is. */
  @Test
  void theTablesOfADescriptionNameNobody() throws IOException, SQLException {
    Path record = Run.demo().get(1);
    InputSource source = InputSource.of(record.toString(), InputForm.YAML, record, record);
    try (TemporaryPool passing =
            TemporaryPool.make(
                new PoolReader(Catalogue.standard(), new ForeignOptions().options(), Release.R4));
        PoolTables tables = PoolTables.open(passing.fill(log(), List.of(source)))) {
      PoolTables.Rows rows =
          tables.ask("SELECT DISTINCT subject, examination, time::DATE FROM findings");
      String output = rows.cells().toString();
      assertTrue(Files.readString(record).contains("qh-p-12"));
      assertFalse(output.contains("qh-") || output.contains("2026"), output);
    }
  }

  private static RunLog log() {
    PrintStream nowhere = new PrintStream(OutputStream.nullOutputStream(), false, UTF_8);
    Streams streams = new Streams(InputStream.nullInputStream(), nowhere, nowhere);
    return new RunLog(streams, IssueSink.NOBODY, IssueSink.NOBODY, false);
  }

  @Test
  void aPoolThatCannotBeReadIsToldAsThatOnOneLine() throws IOException {
    pool("--format", "csv").ok();
    Files.writeString(pool.resolve("findings.parquet"), "no table");
    Run run = Run.of("describe", pool.toString());
    assertEquals(ExitStatus.INTERNAL, run.status(), run::toString);
    assertEquals(1, run.err().lines().count(), run.err());
    assertTrue(run.err().startsWith("isopter: " + pool + ": could not be read"), run.err());
  }

  private Run pool(String... more) {
    Stream<String> usual =
        Stream.of("pool", input.toString(), "--key-file", key, "--output", pool.toString());
    return Run.of(Stream.concat(usual, Stream.of(more)).toArray(String[]::new));
  }

  private void assertRefused(Run run, String words) {
    assertEquals(ExitStatus.USAGE, run.status(), run::toString);
    assertTrue(run.err().contains(words), run.err());
    assertFalse(Files.exists(pool), "a pool was made");
  }
}
