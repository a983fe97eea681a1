package org.isopter.mapper.fuzz;

import static java.nio.charset.StandardCharsets.ISO_8859_1;
import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.OutputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.zip.GZIPOutputStream;
import org.isopter.mapper.foreign.ForeignReader;
import org.isopter.mapper.foreign.Unheard;
import org.isopter.mapper.foreign.reading.Options;
import org.isopter.mapper.foreign.reading.Release;
import org.isopter.mapper.foreign.run.Intake;
import org.isopter.mapper.foreign.run.NdjsonFiles;
import org.isopter.mapper.foreign.run.NdjsonRun;
import org.isopter.mapper.foreign.run.Policy;
import org.isopter.mapper.foreign.run.Together;
import org.isopter.mapper.json.Limits;
import org.isopter.model.catalogue.Catalogue;

/**
 * Any bytes as lines of FHIR JSON: never stopped by a bad line, the same when compressed, and the
 * same when killed after the first block and resumed.
 */
public final class LinesFuzz {

  private static final Limits LIMITS = new Limits(50, 2_000, 4_000);
  private static final NdjsonRun RUN =
      NdjsonRun.of(
          Intake.of(
                  new ForeignReader(Catalogue.standard(), Options.usual().limits(LIMITS)),
                  Release.R4,
                  Together.FOLDER,
                  new Unheard())
              .block(2),
          Policy.FAITHFUL);
  private static final byte GZIP_FIRST = 0x1f;

  private LinesFuzz() {}

  /** Ends a run as a kill would. */
  private static final class Killed extends RuntimeException {
    private static final long serialVersionUID = 1L;
  }

  /** Tries one input. */
  public static void fuzzerTestOneInput(byte[] input) throws IOException {
    Path folder = Files.createTempDirectory("lines");
    try {
      Path plain = Files.write(folder.resolve("in"), input);
      byte[] whole = run(RUN, plain, folder.resolve("whole"), false);
      if (input.length > 0 && input[0] != GZIP_FIRST) {
        byte[] unpacked = run(RUN, packed(plain), folder.resolve("packed"), false);
        assertArrayEquals(whole, named(unpacked, "in.gz", "in"));
        assertArrayEquals(whole, resumed(plain, folder.resolve("resumed")));
      }
    } finally {
      remove(folder);
    }
  }

  private static Path packed(Path plain) throws IOException {
    Path packed = plain.resolveSibling("in.gz");
    try (OutputStream out = new GZIPOutputStream(Files.newOutputStream(packed))) {
      Files.copy(plain, out);
    }
    return packed;
  }

  /** The report names the input, which has another name when it is compressed. */
  private static byte[] named(byte[] all, String name, String other) {
    return new String(all, ISO_8859_1).replace(name, other).getBytes(ISO_8859_1);
  }

  private static byte[] resumed(Path input, Path output) throws IOException {
    NdjsonRun dying =
        RUN.telling(
            (lines, share) -> {
              throw new Killed();
            });
    assertThrows(Killed.class, () -> run(dying, input, output, false));
    return run(RUN, input, output, true);
  }

  /** Returns what was written, one behind the other: records, what goes along, the report. */
  private static byte[] run(NdjsonRun run, Path input, Path output, boolean resume)
      throws IOException {
    Path report = output.resolveSibling(output.getFileName() + ".report");
    NdjsonFiles files = NdjsonFiles.of(output).report(report);
    run.run(input, files, "", resume);
    ByteArrayOutputStream all = new ByteArrayOutputStream();
    for (Path file : List.of(files.records(), files.carried(), report)) {
      if (Files.exists(file)) {
        all.write(Files.readAllBytes(file));
      }
    }
    boolean reported = Files.size(report) > 0;
    assertTrue(Files.size(output) == 0 || reported, "a record without a report");
    return all.toByteArray();
  }

  private static void remove(Path folder) throws IOException {
    try (var files = Files.list(folder)) {
      for (Path file : files.toList()) {
        Files.delete(file);
      }
    }
    Files.delete(folder);
  }
}
