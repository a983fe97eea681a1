package org.isopter.mapper;

import static java.nio.charset.StandardCharsets.UTF_8;

import java.io.IOException;
import java.io.PrintStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;

/** Measures whole processes: time on the wall, time of the processors, greatest memory. */
final class WholeProcess {

  private static final PrintStream OUT = System.out;

  private WholeProcess() {}

  /** Returns the command that runs a class of this class path with so much heap. */
  static List<String> command(String heap, Class<?> main, Object... arguments) {
    List<String> command =
        new ArrayList<>(
            List.of(
                Path.of(System.getProperty("java.home"), "bin", "java").toString(),
                "-Xmx" + heap,
                "-cp",
                System.getProperty("java.class.path"),
                main.getName()));
    Arrays.stream(arguments).map(Object::toString).forEach(command::add);
    return command;
  }

  static Process start(List<String> command) throws IOException {
    return new ProcessBuilder(command).inheritIO().start();
  }

  /** Runs a command over so many things of a kind, and prints what it took. */
  static void measure(String what, int count, String noun, List<String> command)
      throws IOException, InterruptedException {
    long start = System.nanoTime();
    Process process = start(command);
    long peak = 0;
    Duration cpu = Duration.ZERO;
    while (process.isAlive()) {
      peak = Math.max(peak, resident(Path.of("/proc", "" + process.pid(), "status")));
      cpu = process.info().totalCpuDuration().orElse(cpu);
      Thread.sleep(20);
    }
    double seconds = (System.nanoTime() - start) / 1e9;
    double busy = Math.max(cpu.toNanos() / 1e9, 1e-3);
    OUT.printf(
        "%-24s %9d %s %7.1f s wall %7.1f s cpu %8.0f/s %8.0f/cpu-s %5d MB peak, exit %d%n",
        what,
        count,
        noun,
        seconds,
        busy,
        count / seconds,
        count / busy,
        peak >> 10,
        process.exitValue());
  }

  /** Returns the greatest resident memory of a process in kB, as Linux keeps it. */
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
}
