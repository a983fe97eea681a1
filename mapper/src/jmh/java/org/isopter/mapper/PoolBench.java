package org.isopter.mapper;

import java.io.BufferedReader;
import java.io.BufferedWriter;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Iterator;
import java.util.function.Function;
import org.isopter.mapper.fhir.BundleKind;
import org.isopter.mapper.fhir.FhirWriter;
import org.isopter.mapper.record.RecordWriter;
import org.isopter.model.exam.Exam;
import org.isopter.model.simulate.Cohort;

/**
 * Pools of invented examinations in whole processes with a small heap, beside DuckDB reading and
 * flattening the same records in SQL, and a loop over HAPI's parse of the same bundles.
 */
public final class PoolBench {

  private static final String HEAP = "256m";

  private PoolBench() {}

  /**
   * Runs.
   *
   * @param arguments a folder with room for some gigabytes, the number of persons as records, and
   *     the number of persons as bundles
   */
  public static void main(String... arguments) throws IOException, InterruptedException {
    Path folder = Files.createDirectories(Path.of(arguments[0]));
    int persons = Integer.parseInt(arguments[1]);
    int fewer = Integer.parseInt(arguments[2]);
    Path records = folder.resolve("records.ndjson");
    int exams = write(records, persons, new RecordWriter()::line);
    measure("DuckDB read and flatten", exams, "duckdb", records, folder);
    measure(
        "Isopter pool, a tenth",
        write(folder.resolve("tenth.ndjson"), persons / 10, new RecordWriter()::line),
        "isopter",
        folder.resolve("tenth.ndjson"),
        folder);
    measure("Isopter pool", exams, "isopter", records, folder);
    Path bundles = folder.resolve("bundles.ndjson");
    int few = write(bundles, fewer, FhirWriter.of(BundleKind.COLLECTION)::write);
    measure("HAPI parse and loop", few, "hapi", bundles, folder);
    measure("Isopter pool of bundles", few, "isopter", bundles, folder);
  }

  private static void measure(String what, int exams, String how, Path input, Path folder)
      throws IOException, InterruptedException {
    Path output =
        folder.resolve("out-" + how + "-" + input.getFileName() + "-" + System.nanoTime());
    WholeProcess.measure(
        what, exams, "exams", WholeProcess.command(HEAP, PoolAlone.class, how, input, output));
  }

  private static int write(Path file, int persons, Function<Exam, String> form) throws IOException {
    if (Files.exists(file)) {
      try (BufferedReader lines = Files.newBufferedReader(file)) {
        return (int) lines.lines().count();
      }
    }
    int count = 0;
    try (BufferedWriter out = Files.newBufferedWriter(file)) {
      Iterator<Exam> exams = new Cohort(persons, 7).exams().iterator();
      while (exams.hasNext()) {
        out.write(form.apply(exams.next()));
        out.write('\n');
        count++;
      }
    }
    return count;
  }
}
