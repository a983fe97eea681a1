package org.isopter.mapper;

import java.io.File;
import java.io.IOException;
import java.io.PrintStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import org.isopter.mapper.foreign.ForeignLines;
import org.isopter.mapper.foreign.LinesProcess;

/**
 * Foreign lines in whole processes with a small heap: how fast, in how much memory, and whether a
 * run that is killed half way comes to the same bytes; beside HAPI and Jackson parsing alone.
 */
public final class LinesBench {

  private static final String HEAP = "256m";
  private static final int BLOCK = 2_000;
  private static final PrintStream OUT = System.out;

  private final Path folder;

  private LinesBench(Path folder) {
    this.folder = folder;
  }

  /**
   * Runs.
   *
   * @param arguments a folder with room for some gigabytes, the number of lines, and the number of
   *     lines of a tenth run that shows whether memory grows
   */
  public static void main(String... arguments) throws IOException, InterruptedException {
    LinesBench bench = new LinesBench(Files.createDirectories(Path.of(arguments[0])));
    int many = Integer.parseInt(arguments[1]);
    int few = many / 10;
    Path file = bench.lines(many);
    Path tenth = bench.lines(few);
    measure("Jackson tree parse", many, bench.baseline("jackson", file));
    measure("HAPI parse", few, bench.baseline("hapi", tenth));
    measure("Isopter", few, LinesProcess.command(HEAP, tenth, bench.out("few"), BLOCK));
    measure("Isopter", many, LinesProcess.command(HEAP, file, bench.out("many"), BLOCK));
    bench.kill(file, many);
  }

  private Path lines(int count) throws IOException {
    Path file = folder.resolve("in-" + count + ".ndjson");
    if (!Files.exists(file)) {
      ForeignLines.write(file, count, 1);
    }
    return file;
  }

  private Path out(String name) {
    return folder.resolve("out-" + name);
  }

  private List<String> baseline(String library, Path file) {
    return WholeProcess.command(HEAP, ParseAlone.class, library, file);
  }

  private static void measure(String what, int lines, List<String> command)
      throws IOException, InterruptedException {
    WholeProcess.measure(what, lines, "lines", command);
  }

  private void kill(Path file, int lines) throws IOException, InterruptedException {
    Path killed = out("killed");
    Process dying = WholeProcess.start(LinesProcess.command(HEAP, file, killed, BLOCK));
    File part = new File(killed + ".part");
    long half = Files.size(out("many")) / 2;
    while (part.length() < half && dying.isAlive()) {
      Thread.sleep(20);
    }
    dying.destroyForcibly().waitFor();
    List<String> resume =
        new ArrayList<>(LinesProcess.command(HEAP, file, killed, BLOCK, "resume"));
    measure("resumed at half", lines / 2, resume);
    OUT.println("resumed and uninterrupted are the same: " + same(killed, out("many")));
  }

  private static boolean same(Path one, Path other) throws IOException {
    for (Path[] pair :
        Arrays.asList(
            new Path[] {one, other},
            new Path[] {LinesProcess.report(one), LinesProcess.report(other)})) {
      if (Files.mismatch(pair[0], pair[1]) >= 0) {
        return false;
      }
    }
    return true;
  }
}
