package org.isopter.mapper.foreign;

import static java.nio.charset.StandardCharsets.UTF_8;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.io.OutputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import java.util.zip.GZIPOutputStream;
import org.isopter.model.catalogue.Catalogue;
import org.isopter.model.value.FaultException;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** A file of lines is read to its end whatever a line holds, and a killed run goes on. */
class NdjsonRunTest {

  private static final ForeignReader READER =
      new ForeignReader(Catalogue.standard(), Options.usual());

  @TempDir Path folder;

  /** Ends a run as a kill would: nothing after the moment it is thrown is run. */
  private static final class Killed extends RuntimeException {
    private static final long serialVersionUID = 1L;
  }

  @Test
  void oneBadLineNeverStopsTheRest() throws IOException {
    Path input = folder.resolve("in.ndjson");
    Files.writeString(input, line(1) + "\n{oops\n\n" + line(2) + "\n[1]\n" + line(3), UTF_8);
    Report report =
        run().run(input, folder.resolve("out"), Optional.of(folder.resolve("report")), false);
    assertEquals(1, report.unreadable());
    assertEquals(3, report.exams());
    assertEquals(3, report.count("translated"));
    String told = Files.readString(folder.resolve("report"), UTF_8);
    assertTrue(told.contains("line 2"), told);
  }

  @Test
  void readsCompressedLinesAsItReadsPlainOnes() throws IOException {
    Path plain = input(25);
    Path packed = folder.resolve("in.ndjson.gz");
    try (OutputStream out = new GZIPOutputStream(Files.newOutputStream(packed))) {
      Files.copy(plain, out);
    }
    run().run(plain, folder.resolve("a"), Optional.empty(), false);
    run().run(packed, folder.resolve("b"), Optional.empty(), false);
    assertEquals(Files.readString(folder.resolve("a")), Files.readString(folder.resolve("b")));
  }

  @Test
  void goesOnAfterAKillWithoutLossOrDuplicate() throws IOException {
    Path input = input(50);
    Path whole = folder.resolve("whole");
    Path killed = folder.resolve("killed");
    run().run(input, whole, Optional.of(folder.resolve("whole-report")), false);
    Optional<Path> report = Optional.of(folder.resolve("killed-report"));
    NdjsonRun dying = run().telling(lines -> kill(lines, 14));
    assertThrows(Killed.class, () -> dying.run(input, killed, report, false));
    assertFalse(Files.exists(killed));
    // A kill may come while a block is half written.
    Files.writeString(
        folder.resolve("killed.part"), Files.readString(folder.resolve("killed.part")) + "{\"half");
    run().run(input, killed, report, true);
    assertEquals(Files.readString(whole), Files.readString(killed));
    assertEquals(Files.readString(folder.resolve("whole-report")), Files.readString(report.get()));
    assertFalse(Files.exists(folder.resolve("killed.checkpoint")));
  }

  @Test
  void refusesToGoOnWithAnotherInput() throws IOException {
    Path out = folder.resolve("out");
    Path input = input(30);
    NdjsonRun dying = run().telling(lines -> kill(lines, 7));
    assertThrows(Killed.class, () -> dying.run(input, out, Optional.empty(), false));
    Path other = input(31);
    assertThrows(FaultException.class, () -> run().run(other, out, Optional.empty(), true));
  }

  @Test
  void writesVisitsInTheOrderOfTheirFirstLines() throws IOException {
    Path input = input(20);
    run().run(input, folder.resolve("out"), Optional.empty(), false);
    List<String> lines = Files.readAllLines(folder.resolve("out"));
    assertEquals(20, lines.size());
    for (int i = 0; i < 20; i++) {
      assertTrue(lines.get(i).contains("\"p-" + (i + 1) + "\""), lines.get(i));
    }
  }

  @Test
  void cutsALineThatIsTooLong() throws IOException {
    Limits small = new Limits(50, 5_000, 5_000);
    Path input = folder.resolve("in.ndjson");
    Files.writeString(
        input, line(1) + "\n\"" + "x".repeat(200_000) + "\"\n" + line(2) + "\n", UTF_8);
    ForeignReader reader = new ForeignReader(Catalogue.standard(), Options.usual().limits(small));
    Report report =
        NdjsonRun.of(reader, Policy.FAITHFUL, small)
            .run(input, folder.resolve("out"), Optional.empty(), false);
    assertEquals(1, report.unreadable());
    assertEquals(2, report.exams());
  }

  private static void kill(long lines, long at) {
    if (lines >= at) {
      throw new Killed();
    }
  }

  private static NdjsonRun run() {
    return NdjsonRun.of(READER, Policy.FAITHFUL, Limits.USUAL).block(7);
  }

  private Path input(int lines) throws IOException {
    StringBuilder text = new StringBuilder();
    for (int i = 1; i <= lines; i++) {
      text.append(line(i)).append('\n');
    }
    return Files.writeString(folder.resolve("in-" + lines + ".ndjson"), text, UTF_8);
  }

  private static String line(int person) {
    return ForeignRules.byId("unit-spelling")
        .orElseThrow()
        .takes()
        .json()
        .replace("p-17", "p-" + person);
  }
}
