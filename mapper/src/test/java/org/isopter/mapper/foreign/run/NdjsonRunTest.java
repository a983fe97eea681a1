package org.isopter.mapper.foreign.run;

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
import java.util.zip.GZIPOutputStream;
import org.isopter.mapper.foreign.ForeignReader;
import org.isopter.mapper.foreign.ForeignWriter;
import org.isopter.mapper.foreign.reading.Carried;
import org.isopter.mapper.foreign.reading.Options;
import org.isopter.mapper.foreign.reading.Release;
import org.isopter.mapper.foreign.vocabulary.ForeignRules;
import org.isopter.mapper.json.Limits;
import org.isopter.mapper.record.RecordFormat;
import org.isopter.mapper.record.RecordReader;
import org.isopter.model.catalogue.Catalogue;
import org.isopter.model.exam.Exam;
import org.isopter.model.value.Fault;
import org.isopter.model.value.FaultException;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** A file of lines is read to its end whatever a line holds, and a killed run goes on. */
class NdjsonRunTest {

  private static final ForeignReader READER =
      new ForeignReader(Catalogue.standard(), Options.usual());

  private static final RecordReader RECORDS = new RecordReader(Catalogue.standard());

  private final Counts counts = new Counts();
  @TempDir Path folder;

  /** Ends a run as a kill would: nothing after the moment it is thrown is run. */
  private static final class Killed extends RuntimeException {
    private static final long serialVersionUID = 1L;
  }

  @Test
  void oneBadLineNeverStopsTheRest() throws IOException {
    Path input = folder.resolve("in.ndjson");
    Files.writeString(input, line(1) + "\n{oops\n\n" + line(2) + "\n[1]\n" + line(3), UTF_8);
    run().run(input, files("out").report(folder.resolve("report")), "", false);
    assertEquals(2, counts.unreadable());
    assertEquals(3, counts.exams());
    assertEquals(3, counts.count("translated"));
    String reported = Files.readString(folder.resolve("report"), UTF_8);
    assertTrue(reported.contains("in.ndjson:2:2: "), reported);
    assertTrue(reported.contains("in.ndjson:5: saw a list"), reported);
    assertFalse(reported.contains("oops"), reported);
  }

  @Test
  void readsCompressedLinesAsItReadsPlainOnes() throws IOException {
    Path plain = input(25);
    Path packed = folder.resolve("in.ndjson.gz");
    try (OutputStream out = new GZIPOutputStream(Files.newOutputStream(packed))) {
      Files.copy(plain, out);
    }
    run().run(plain, files("a"), "", false);
    run().run(packed, files("b"), "", false);
    assertEquals(text("a"), text("b"));
    assertEquals(text("a.carried"), text("b.carried"));
  }

  @Test
  void goesOnAfterAKillWithoutLossOrDuplicate() throws IOException {
    Path input = input(50);
    run().run(input, files("whole").report(folder.resolve("whole-report")), "", false);
    NdjsonFiles killed = files("killed").report(folder.resolve("killed-report"));
    NdjsonRun dying = run().telling((lines, share) -> kill(lines, 14));
    assertThrows(Killed.class, () -> dying.run(input, killed, "", false));
    assertFalse(Files.exists(killed.records()));
    // A kill may come while a block is half written.
    for (String part : List.of("killed.part", "killed.carried.part", "killed-report.part")) {
      Files.writeString(folder.resolve(part), text(part) + "{\"half");
    }
    run().run(input, killed, "", true);
    assertEquals(text("whole"), text("killed"));
    assertEquals(text("whole.carried"), text("killed.carried"));
    assertEquals(text("whole-report"), text("killed-report"));
    assertEquals(50, text("killed").lines().count());
    assertEquals(50, text("killed.carried").lines().count());
    assertFalse(Files.exists(folder.resolve("killed.checkpoint")));
  }

  @Test
  void refusesToGoOnWithAnotherInput() throws IOException {
    Path input = input(30);
    NdjsonRun dying = run().telling((lines, share) -> kill(lines, 7));
    assertThrows(Killed.class, () -> dying.run(input, files("out"), "as asked", false));
    Path other = input(31);
    assertThrows(FaultException.class, () -> run().run(other, files("out"), "as asked", true));
    assertThrows(FaultException.class, () -> run().run(input, files("out"), "another", true));
    Files.delete(folder.resolve("out.carried.part"));
    assertThrows(FaultException.class, () -> run().run(input, files("out"), "as asked", true));
  }

  @Test
  void eachRecordFindsWhatGoesAlongWithIt() throws IOException {
    run().run(input(20), files("out"), "", false);
    List<Exam> exams =
        text("out").lines().map(line -> RECORDS.read(line, RecordFormat.JSON).orThrow()).toList();
    try (CarriedFile carried = CarriedFile.open(folder.resolve("out.carried"))) {
      for (int i = exams.size() - 1; i >= 0; i--) {
        Carried along = carried.take(exams.get(i).header().id());
        assertEquals(1, along.leaves().size(), along.toString());
        assertEquals(List.of(), ForeignWriter.homeless(exams.get(i), along));
      }
      assertEquals(0, carried.left());
    }
  }

  @Test
  void leavesNoFileWhereNothingGoesAlong() throws IOException {
    Files.writeString(folder.resolve("out.carried"), "of an earlier run");
    NdjsonRun.of(intake(READER), Policy.EXTRACT).run(input(3), files("out"), "", false);
    assertFalse(Files.exists(folder.resolve("out.carried")));
    assertFalse(Files.exists(folder.resolve("out.carried.part")));
  }

  @Test
  void writesVisitsInTheOrderOfTheirFirstLines() throws IOException {
    Path input = input(20);
    run().run(input, files("out"), "", false);
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
    NdjsonRun.of(intake(reader), Policy.FAITHFUL).run(input, files("out"), "", false);
    assertEquals(1, counts.unreadable());
    assertEquals(2, counts.exams());
  }

  private static void kill(long lines, long at) {
    if (lines >= at) {
      throw new Killed();
    }
  }

  private NdjsonRun run() {
    return NdjsonRun.of(intake(READER), Policy.FAITHFUL);
  }

  private Intake intake(ForeignReader reader) {
    return Intake.of(reader, Release.R4, Together.FOLDER, receiver()).block(7);
  }

  /** Counts what a run hands on. */
  private Receiver receiver() {
    return new Receiver() {
      @Override
      public void refused(Origin origin, List<Fault> faults) {
        counts.addUnreadable();
      }

      @Override
      public void failed(Origin origin, RuntimeException mistake) {
        throw mistake;
      }

      @Override
      public void deleted(Origin origin, String name) {
        throw new AssertionError(name);
      }

      @Override
      public void read(Batch batch) {
        counts.add(batch, Policy.FAITHFUL.judge(batch));
      }
    };
  }

  private NdjsonFiles files(String name) {
    return NdjsonFiles.of(folder.resolve(name));
  }

  private String text(String name) throws IOException {
    return Files.readString(folder.resolve(name), UTF_8);
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
        .replace("p-17", "p-" + person)
        .replace("\"status\"", "\"identifier\":[{\"value\":\"n-" + person + "\"}],\"status\"");
  }
}
