package org.isopter.mapper;

import static java.nio.charset.StandardCharsets.UTF_8;

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
    bench.measure("Jackson tree parse", many, bench.baseline("jackson", file));
    bench.measure("HAPI parse", few, bench.baseline("hapi", tenth));
    bench.measure("Isopter", few, LinesProcess.command(HEAP, tenth, bench.out("few"), BLOCK));
    bench.measure("Isopter", many, LinesProcess.command(HEAP, file, bench.out("many"), BLOCK));
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
    return List.of(
        Path.of(System.getProperty("java.home"), "bin", "java").toString(),
        "-Xmx" + HEAP,
        "-cp",
        System.getProperty("java.class.path"),
        ParseAlone.class.getName(),
        library,
        file.toString());
  }

  private void measure(String what, int lines, List<String> command)
      throws IOException, InterruptedException {
    long start = System.nanoTime();
    Process process = start(command);
    long peak = peak(process);
    double seconds = (System.nanoTime() - start) / 1e9;
    OUT.printf(
        "%-20s %9d lines %7.1f s wall %7.1f s cpu %8.0f lines/s %8.0f lines/cpu-s %5d MB peak, exit"
            + " %d%n",
        what,
        lines,
        seconds,
        cpu.toNanos() / 1e9,
        lines / seconds,
        lines / (cpu.toNanos() / 1e9),
        peak >> 10,
        process.exitValue());
  }

  private java.time.Duration cpu = java.time.Duration.ZERO;

  /** Returns the greatest resident memory of a process in kB, as Linux keeps it. */
  private long peak(Process process) throws IOException, InterruptedException {
    long peak = 0;
    while (process.isAlive()) {
      peak = Math.max(peak, resident(Path.of("/proc", "" + process.pid(), "status")));
      cpu = process.info().totalCpuDuration().orElse(cpu);
      Thread.sleep(20);
    }
    return peak;
  }

  private static long resident(Path status) {
    try {
      return Files.readAllLines(status, UTF_8).stream()
          .filter(line -> line.startsWith("VmHWM:"))
          .mapToLong(line -> Long.parseLong(line.replaceAll("\\D", "")))
          .findFirst()
          .orElse(0);
    } catch (IOException ended) {
      return 0;
    }
  }

  private static Process start(List<String> command) throws IOException {
    return new ProcessBuilder(command).inheritIO().start();
  }

  private void kill(Path file, int lines) throws IOException, InterruptedException {
    Path killed = out("killed");
    Process dying = start(LinesProcess.command(HEAP, file, killed, BLOCK));
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
