package org.isopter.mapper.fuzz;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.io.OutputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Optional;
import java.util.zip.GZIPOutputStream;
import org.isopter.mapper.foreign.ForeignReader;
import org.isopter.mapper.foreign.Limits;
import org.isopter.mapper.foreign.NdjsonRun;
import org.isopter.mapper.foreign.Options;
import org.isopter.mapper.foreign.Policy;
import org.isopter.model.catalogue.Catalogue;

/**
 * Any bytes as lines of FHIR JSON: never stopped by a bad line, the same when compressed, and the
 * same when killed after the first block and resumed.
 */
public final class LinesFuzz {

  private static final Limits LIMITS = new Limits(50, 2_000, 4_000);
  private static final NdjsonRun RUN =
      NdjsonRun.of(
              new ForeignReader(Catalogue.standard(), Options.usual().limits(LIMITS)),
              Policy.FAITHFUL,
              LIMITS)
          .block(2);
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
        assertArrayEquals(whole, run(RUN, packed(plain), folder.resolve("packed"), false));
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

  private static byte[] resumed(Path input, Path output) throws IOException {
    NdjsonRun dying =
        RUN.telling(
            lines -> {
              throw new Killed();
            });
    assertThrows(Killed.class, () -> run(dying, input, output, false));
    return run(RUN, input, output, true);
  }

  /** Returns the output and the report, one behind the other. */
  private static byte[] run(NdjsonRun run, Path input, Path output, boolean resume)
      throws IOException {
    Path report = output.resolveSibling(output.getFileName() + ".report");
    run.run(input, output, Optional.of(report), resume);
    byte[] out = Files.readAllBytes(output);
    byte[] told = Files.readAllBytes(report);
    assertTrue(out.length == 0 || told.length > 0, "a bundle without a report");
    byte[] both = java.util.Arrays.copyOf(out, out.length + told.length);
    System.arraycopy(told, 0, both, out.length, told.length);
    return both;
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
